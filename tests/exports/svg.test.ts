import { DOMParser, type Document, type Element } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Job } from '../../server/job/job.ts';
import { viewSvg } from '../../server/exports/view-svg.ts';
import type { View } from '../../server/plan/view.ts';
import { frameOf, inputOf, inSpace, straight } from './made-up-frames.ts';

function read(key: View['key'], job: Job, member: string | null = null): Document {
  const made = viewSvg(key, inputOf(job, member));
  if (!made.ok) throw new Error(made.reason);
  const faults: string[] = [];
  const parser = new DOMParser({ onError: (level, message) => void faults.push(`${level}: ${message}`) });
  const document = parser.parseFromString(made.text, 'image/svg+xml');
  expect(faults).toEqual([]);
  return document;
}

const all = (parent: Document | Element, tag: string): Element[] => [...parent.getElementsByTagName(tag)];
const group = (document: Document, id: string) => all(document, 'g').find((one) => one.getAttribute('id') === id);

/** The points of a path, y up again. */
const points = (path: Element): number[][] =>
  path
    .getAttribute('d')!
    .slice(1)
    .split('L')
    .map((spot) => spot.split(' ').map(Number))
    .map(([x, y]) => [x!, y === 0 ? 0 : -y!]);

const cases: [string, View['key'], Job][] = [
  ['face of a frame that came back', 'face', landingStage()],
  ['pictorial view of it', 'pictorial', landingStage()],
  ...(['top', 'face', 'side', 'pictorial'] as const).map((key): [string, View['key'], Job] => [
    `${key} of a run in space`,
    key,
    inSpace(),
  ]),
];

describe('a view', () => {
  it.each(cases)('%s: as wide in millimetres as its drawing, all of it inside', (_, key, job) => {
    const view = inputOf(job).plan.views.find((one) => one.key === key)!;
    const svg = read(key, job).documentElement!;
    const [left, top, width, height] = svg.getAttribute('viewBox')!.split(' ').map(Number) as [
      number,
      number,
      number,
      number,
    ];
    expect(svg.getAttribute('width')).toBe(`${String(width)}mm`);
    expect(svg.getAttribute('height')).toBe(`${String(height)}mm`);
    expect(left).toBeLessThan(view.bounds[0]);
    expect(left + width).toBeGreaterThan(view.bounds[2]);
    expect(-top).toBeGreaterThan(view.bounds[3]);
    expect(-top - height).toBeLessThan(view.bounds[1]);
  });

  it.each(cases)('%s: every edge and centreline of the plan, in groups by what is drawn', (_, key, job) => {
    const view = inputOf(job).plan.views.find((one) => one.key === key)!;
    const document = read(key, job);
    expect(view.layers.length).toBeGreaterThan(0);
    for (const layer of view.layers) {
      const drawn = group(document, layer.role)!;
      const paths = all(drawn, 'path');
      const edges = paths.filter((path) => path.getAttribute('class') === 'edge').map(points);
      expect(edges).toEqual(
        layer.members.flatMap((member) => member.edges.map((edge) => edge.map(([x, y]) => [x || 0, y || 0]))),
      );
      const names = all(drawn, 'title').map((title) => title.textContent);
      expect(names).toEqual(layer.members.map(({ member }) => member));
    }
    const wanted = view.dimensions.filter(({ layer }) => layer === 'wanted');
    expect(all(group(document, 'dimensions')!, 'text')).toHaveLength(wanted.length);
  });

  it('of one member is as large as that member', () => {
    const whole = read('face', landingStage()).documentElement!;
    const document = read('face', landingStage(), 'crossbar 1');
    const width = (svg: Element) => Number.parseFloat(svg.getAttribute('width')!);
    expect(width(document.documentElement!)).toBeLessThan(width(whole));
    expect(all(group(document, 'wanted')!, 'title').map((title) => title.textContent)).toEqual(['crossbar 1']);
    expect(all(group(document, 'dimensions')!, 'text')).toHaveLength(0);
  });

  it('holds names that are no XML', () => {
    const name = `<a> & "b"\u0001\uD800`;
    const job = frameOf([
      straight(name, [
        [0, 0, 0],
        [300, 0, 0],
      ]),
    ]);
    const document = read('face', { ...job, title: ']]> <script>' });
    expect(all(group(document, 'wanted')!, 'title').map((title) => title.textContent)).toEqual(['<a> & "b" ']);
    expect(all(document, 'script')).toHaveLength(0);
  });

  it('that the frame does not have is refused', () => {
    expect(viewSvg('side', inputOf(landingStage()))).toMatchObject({ ok: false, reason: 'no-such-view' });
  });
});
