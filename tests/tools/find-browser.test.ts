import { afterEach, describe, expect, test, vi } from 'vitest';
import { CHOICE, findBrowser } from '../../e2e/find-browser.ts';

describe('the choice of a browser by hand', () => {
  afterEach(() => vi.unstubAllEnvs());

  test('is taken if it starts', () => {
    vi.stubEnv(CHOICE, process.execPath);
    expect(findBrowser()).toBe(process.execPath);
  });

  test('is an error if nothing starts there, never passed over', () => {
    vi.stubEnv(CHOICE, '/no/such/browser');
    expect(() => findBrowser()).toThrow("RIBBONWRIGHT_BROWSER is set to '/no/such/browser'");
  });
});
