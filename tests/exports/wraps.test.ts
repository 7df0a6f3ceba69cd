import { DOMParser, type Element } from '@xmldom/xmldom';
import DxfParser, { type ILwpolylineEntity, type ITextEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import type { ExportInput } from '../../server/exports/export-file.ts';
import { wrapsDxf } from '../../server/exports/wraps-dxf.ts';
import { wrapsSvg } from '../../server/exports/wraps-svg.ts';
import type { CorrectionPlan } from '../../server/plan/correction.ts';
import type { Joint } from '../../server/plan/joint.ts';
import type { WrapTemplate } from '../../server/plan/frame.ts';
import type { CutJoint } from '../../server/solver/correction/cut-joint.ts';
import { planJoints } from '../../server/solver/correction/joint-plan.ts';
import { frameGeometry } from '../../server/solver/frame/expand-frame.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { rotate } from '../../server/solver/geometry/vector.ts';
import { braced, frameOf, inputOf, straight } from './made-up-frames.ts';

/** The braced frame with holes under its saddles, and joints on its rail: a wedge, a slug, new tube let in. */
function cutFrame(): ExportInput {
  const job = braced();
  const holes = { ...job.purge.holes, underSaddles: 'all' as const };
  const input = inputOf({ ...job, purge: { ...job.purge, holes } });
  const shape = { outsideDiameter: 38.1, cornerRadius: 117, closingStraight: () => null, root: '/frame' };
  const frame = frameGeometry(job.frame, shape as unknown as Parameters<typeof frameGeometry>[1]).geometry!;
  const rail = frame.members.find(({ name }) => name === 'rail')!;
  const joint = (at: number, removed: number, lean: number, letIn: CutJoint['letIn'] = null): CutJoint => {
    const { tangent } = placeAt(rail.centreline, at)!;
    const [stationA, stationB] = [at - removed / 2, at + removed / 2];
    return {
      member: rail,
      stationA,
      stationB,
      meetsA: stationA,
      meetsB: stationB,
      normalA: rotate(tangent, { x: 0, y: 1, z: 0 }, lean),
      normalB: rotate(tangent, { x: 0, y: 1, z: 0 }, -lean),
      kink: 2 * lean,
      hiLo: 0,
      twist: 0,
      letIn,
      point: { x: 0, y: 0, z: 0 },
      range: { from: 0, to: 1000 },
      bounds: { from: 'end', to: 'end' },
    };
  };
  const letIn = { length: 60, radius: null, angle: 0, kinkA: 0.02, kinkB: 0.02 };
  const cuts = [joint(150, 30, 0.2), joint(450, 62, 0), joint(800, 40, 0.01, letIn)];
  const context = {
    tube: job.tube,
    tape: 1,
    paperThickness: 0.1,
    templateStations: 16,
    templates: true,
    quality: 'B',
  } as const;
  const { joints } = planJoints(cuts, frame, { ...job.closing, shrinkage: 0.5 }, context);
  const correction = { chosen: 'splice-own', ways: [{ key: 'splice-own', joints }] } as unknown as CorrectionPlan;
  return { ...input, plan: { ...input.plan, correction } };
}

const input = cutFrame();
const joints: readonly Joint[] = input.plan.correction!.ways[0]!.joints;
/** In the order of the drawing, from the top down. */
const wraps: readonly WrapTemplate[] = [
  ...joints.flatMap(({ faceA, faceB, letIn }) => [faceA.template, faceB.template, ...(letIn?.templates ?? [])]),
  ...input.plan.frame!.members.flatMap(({ templates }) => templates),
].filter((wrap) => wrap !== null);

type Line = readonly (readonly [number, number])[];
type Read = { readonly lines: (layer: string) => Line[]; readonly texts: string[] };

function dxf(from: ExportInput): Read {
  const made = wrapsDxf(from);
  if (!made.ok) throw new Error(made.reason);
  const drawing = new DxfParser().parseSync(made.text)!;
  expect(drawing.header['$INSUNITS']).toBe(4);
  expect(Object.keys(drawing.tables.layer.layers)).toEqual(
    expect.arrayContaining(['cut', 'ring', 'scrap', 'paper', 'check', 'names']),
  );
  const lines = drawing.entities.filter((one): one is ILwpolylineEntity => one.type === 'LWPOLYLINE');
  const texts = drawing.entities.filter((one): one is ITextEntity => one.type === 'TEXT');
  expect(new Set(texts.map(({ layer }) => layer))).toEqual(new Set(['names']));
  return {
    lines: (layer) =>
      lines.filter((one) => one.layer === layer).map(({ vertices }) => vertices.map(({ x, y }) => [x, y] as const)),
    texts: texts.map(({ text }) => text),
  };
}

function svg(from: ExportInput): Read {
  const made = wrapsSvg(from);
  if (!made.ok) throw new Error(made.reason);
  const root = new DOMParser().parseFromString(made.text, 'image/svg+xml').documentElement!;
  const [, , width, height] = root.getAttribute('viewBox')!.split(' ').map(Number);
  expect(root.getAttribute('width')).toBe(`${String(width)}mm`);
  expect(root.getAttribute('height')).toBe(`${String(height)}mm`);
  const group = (id: string): Element =>
    [...root.getElementsByTagName('g')].find((one) => one.getAttribute('id') === id)!;
  const points = (path: Element): Line =>
    path
      .getAttribute('d')!
      .slice(1)
      .split('L')
      .map((spot) => spot.split(' ').map(Number))
      .map(([x, y]) => [x!, height! - y!] as const);
  const lines = (layer: string) => [...group(layer).getElementsByTagName('path')].map(points);
  // everything stands on the paper
  for (const layer of ['cut', 'ring', 'scrap', 'paper', 'check'])
    for (const [x, y] of lines(layer).flat()) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(width!);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(height!);
    }
  return { lines, texts: [...group('names').getElementsByTagName('text')].map(({ textContent }) => textContent ?? '') };
}

describe.each([
  ['DXF', dxf],
  ['SVG', svg],
] as const)('wraps as %s', (_, read) => {
  const drawn = read(input);

  it('are those of the joints, of the saddles and of the holes', () => {
    expect(wraps.map(({ kind }) => kind)).toEqual([
      'wedge',
      ...['plane', 'plane', 'plane', 'plane', 'plane', 'plane'],
      'hole',
      'hole',
      'saddle',
      'saddle',
    ]);
    expect(drawn.lines('ring')).toHaveLength(wraps.length);
  });

  it('measure what the plan says, to a hundredth of a millimetre', () => {
    const lines = wraps.flatMap(({ curve, second }) => (second === null ? [curve] : [curve, second]));
    const owners = wraps.flatMap((wrap, index) => (wrap.second === null ? [index] : [index, index]));
    const cuts = drawn.lines('cut');
    const rings = drawn.lines('ring');
    expect(cuts).toHaveLength(lines.length);
    for (const [index, cut] of cuts.entries()) {
      const owner = owners[index]!;
      const [from, to] = rings[owner]!;
      expect(Math.abs(to![0] - from![0] - wraps[owner]!.wrapLength)).toBeLessThan(0.01);
      expect(cut).toHaveLength(lines[index]!.length);
      for (const [at, [girth, ordinate]] of lines[index]!.entries()) {
        expect(Math.abs(cut[at]![0] - from![0] - girth)).toBeLessThan(0.01);
        expect(Math.abs(cut[at]![1] - from![1] - ordinate)).toBeLessThan(0.01);
      }
    }
  });

  it('lie clear of one another, and their strips stand round their lines', () => {
    const strips = drawn.lines('paper').filter((line) => line.length === 5);
    expect(strips).toHaveLength(wraps.length);
    const spans = strips.map((line) => line.map(([, y]) => y)).map((ys) => [Math.min(...ys), Math.max(...ys)] as const);
    for (const [index, [bottom]] of spans.entries())
      if (index + 1 < spans.length) expect(bottom).toBeGreaterThan(spans[index + 1]![1]);
  });

  it('have a bar of 100 mm to measure, their names, and where the scrap is', () => {
    const [bar] = drawn.lines('check').map(([from, to]) => to![0] - from![0]);
    expect(bar).toBeCloseTo(100, 6);
    expect(drawn.texts).toEqual(
      expect.arrayContaining([
        'rail, joint 1, faces A and B',
        'rail, joint 2, face A',
        'rail, joint 2, face B',
        'Let-in piece of joint 3, end A',
        'rail, hole 1 under a saddle',
        'square, saddle at the start',
        'slanting, saddle at the finish',
        'scrap between the lines',
        'Ring at 60.0 mm from the datum end of the let-in piece; the far end is up.',
        'scrap inside the line',
      ]),
    );
  });

  it('show by strokes which side is scrap', () => {
    const rings = drawn.lines('ring').map(([from]) => from![1]);
    const strokes = drawn.lines('scrap');
    // the second wrap is face A of a slug: its line is its ring, and what is after it goes
    const after = strokes.filter(([from]) => Math.abs(from![1] - rings[1]!) < 1e-3);
    const before = strokes.filter(([from]) => Math.abs(from![1] - rings[2]!) < 1e-3);
    expect(after.length).toBeGreaterThan(20);
    for (const [from, to] of after) expect(to![1]).toBeGreaterThan(from![1]);
    for (const [from, to] of before) expect(to![1]).toBeLessThan(from![1]);
  });

  it('of one member are its own', () => {
    expect(read({ ...input, member: 'square' }).lines('cut')).toHaveLength(1);
  });
});

it.each([
  ['DXF', wrapsDxf],
  ['SVG', wrapsSvg],
])('a frame without a cut has no wraps: %s', (_, write) => {
  const plain = frameOf([
    straight('bar', [
      [0, 0, 0],
      [500, 0, 0],
    ]),
  ]);
  expect(write(inputOf(plain))).toMatchObject({ ok: false, reason: 'no-wraps' });
  expect(write({ ...input, member: 'nobody' })).toMatchObject({ ok: false, reason: 'no-such-member' });
  expect(write({ ...input, plan: { ...input.plan, frame: null } })).toMatchObject({ reason: 'frame-not-possible' });
});
