import { vi } from 'vitest';
import { drawAim } from '../../../app/canvas/draw/aim.ts';
import type { Aim } from '../../../app/canvas/model.ts';
import { THEMES } from '../../../app/canvas/theme.ts';
import type { Editor } from '../../../app/editor.ts';
import { layOutSheet } from '../../../src/drawing/sheet.ts';
import { fakeContext } from '../canvas/fake-context.ts';

/** What a running gesture has drawn over what moves of a connector's aim. The test that asks mocks the drawing of it. */
export function aimDrawn({ gestures }: Editor): Aim | undefined {
  const moving = gestures.get();
  if (!moving?.overlay) return undefined;
  const draw = vi.mocked(drawAim);
  draw.mockClear();
  const view = { left: 0, top: 0, right: 1000, bottom: 1000 };
  const paper = { sheet: layOutSheet(moving.derived, 'rear', 1), theme: THEMES.light, view };
  moving.overlay.draw(fakeContext().ctx, paper, moving.derived);
  return draw.mock.lastCall?.[3];
}
