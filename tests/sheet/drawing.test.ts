import { describe, expect, it } from 'vitest';
import { hpToMm } from '../../src/geometry/rack.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Take } from '../../src/layout/layout.ts';
import { drawingOf, svgOf, VIEWS } from '../../src/sheet/drawing.ts';
import { drawingFile, FILE_SCALE } from '../../src/sheet/drawing-file.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { fortyModules } from '../support/forty-modules.ts';

const { kit, takes } = demoLayout();
const take = deriveTake(kit, takes[0] as Take);

/** Left ends and widths of the modules' panels, mm of the case. */
const panels = (svg: string): { x: number; width: number }[] => {
  const layer = svg.slice(svg.indexOf('<title>modules</title>'));
  return Array.from(
    layer.matchAll(/<rect x="([-\d.]+)" y="[-\d.]+" width="([\d.]+)" height="128.4"/g),
    ([, x, width]) => ({
      x: Number(x),
      width: Number(width),
    }),
  );
};

describe('a drawing on paper', () => {
  it('is to scale: panels are as wide as they are, and the rear is the front mirrored', () => {
    const front = panels(drawingFile(take, 'front'));
    const rear = panels(drawingFile(take, 'rear'));
    expect(front).toHaveLength(take.places.modules.length);
    const { widthMm } = drawingOf(take, 'front');
    take.places.modules.forEach(({ facts }, i) => {
      // A panel is 0.3 mm narrower than its place (see geometry/rack.ts).
      expect(front[i]?.width).toBeCloseTo(hpToMm(facts.kind.widthHp) - 0.3, 3);
      expect((rear[i]?.x ?? 0) + (rear[i]?.width ?? 0)).toBeCloseTo(widthMm - (front[i]?.x ?? 0), 2);
    });
  });

  it('has the size that its scale says', () => {
    const drawing = drawingOf(take, 'rear');
    const svg = svgOf(drawing, FILE_SCALE, 2.5, 'x').text;
    const [, width, , shown] =
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="\S+ \S+ (\S+)/.exec(svg) ?? [];
    expect(Number(width)).toBeCloseTo(Number(shown) * FILE_SCALE, 2);
  });

  it.each(VIEWS)('is a well-formed %s with every module in words', (view) => {
    const svg = drawingFile(take, view);
    const opened = svg.match(/<(?!\/|\?)[^>]*[^/]>/g)?.length;
    expect(svg.match(/<\//g)?.length).toBe(opened);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    const words = Array.from(svg.matchAll(/<text[^>]*>([^<]*)</g), ([, text]) => text).join(' ');
    for (const { name } of take.places.modules)
      for (const word of name.split(' ')) expect(words).toContain(word);
  });

  it('names links and leads apart, as layers', () => {
    const svg = drawingFile(take, 'rear');
    const leads = svg.slice(svg.indexOf('id="rear-leads"'), svg.indexOf('id="rear-names"'));
    const links = svg.slice(svg.indexOf('id="rear-links"'), svg.indexOf('id="rear-leads"'));
    // Each stripe is a dark line with light ticks on it.
    expect(leads.match(/stroke="#c4161c"/g)).toHaveLength(8);
    expect(links.length).toBeGreaterThan(1000);
  });

  it('shows rows on pages of their own where they would be too small', () => {
    const [upper, lower] = [drawingOf(take, 'rear', 0, 1), drawingOf(take, 'rear', 1, 2)];
    expect(upper.heightMm + lower.heightMm).toBeGreaterThan(drawingOf(take, 'rear').heightMm * 0.8);
    expect(lower.topMm).toBeGreaterThan(upper.heightMm / 2);
  });

  it('keeps modules in sight that stand out beyond their row', () => {
    const many = fortyModules();
    const { leftMm, widthMm } = drawingOf(deriveTake(many.kit, many.takes[0] as Take), 'rear');
    expect(leftMm).toBeLessThan(0);
    expect(widthMm).toBeLessThan(2000);
  });
});
