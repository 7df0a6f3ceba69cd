import DxfParser, { type IArcEntity, type IEntity, type ILineEntity, type ILwpolylineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { centrelineDxf } from '../../server/exports/centreline-dxf.ts';
import type { Exported, ExportInput } from '../../server/exports/export-file.ts';
import { viewsDxf } from '../../server/exports/views-dxf.ts';
import type { FlatPoint } from '../../server/plan/view.ts';
import { add, cross, length, scale, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { arc, braced, chain, frameOf, inputOf, inSpace, line, straight } from './made-up-frames.ts';

function read(made: Exported) {
  if (!made.ok) throw new Error(made.reason);
  const drawing = new DxfParser().parseSync(made.text);
  if (drawing === null) throw new Error('no drawing');
  expect(drawing.header['$INSUNITS']).toBe(4);
  return drawing;
}

/** An arc's points in space as a reader of the DXF reference sets them up: its plane from the extrusion alone. */
function pointsOfArc(entity: IArcEntity): { start: Vector3; middle: Vector3; end: Vector3; turned: number } {
  const normal = {
    x: entity.extrusionDirectionX,
    y: entity.extrusionDirectionY,
    z: entity.extrusionDirectionZ,
  };
  expect(length(normal)).toBeCloseTo(1, 12);
  const near = Math.abs(normal.x) < 1 / 64 && Math.abs(normal.y) < 1 / 64;
  const x = unit(cross(near ? { x: 0, y: 1, z: 0 } : { x: 0, y: 0, z: 1 }, normal))!;
  const y = unit(cross(normal, x))!;
  const at = (angle: number) => {
    const [u, v] = [
      entity.center.x + entity.radius * Math.cos(angle),
      entity.center.y + entity.radius * Math.sin(angle),
    ];
    return add(add(scale(x, u), scale(y, v)), scale(normal, entity.center.z));
  };
  const turned = (entity.endAngle - entity.startAngle + 4 * Math.PI) % (2 * Math.PI);
  const { startAngle } = entity;
  return { start: at(startAngle), middle: at(startAngle + turned / 2), end: at(startAngle + turned), turned };
}

const apart = (a: Vector3, b: Vector3): number => length(subtract(a, b));
const isLine = (entity: IEntity): entity is ILineEntity => entity.type === 'LINE';
const isArc = (entity: IEntity): entity is IArcEntity => entity.type === 'ARC';

const frames: [string, Job][] = [
  ['a frame that came back', landingStage()],
  ['a ring', newJob('ring')],
  ['a run', newJob('run')],
  ['bends in turned planes', inSpace()],
  ['saddles', braced()],
];

describe('the centrelines', () => {
  it.each(frames)('of %s come back as lines and true arcs, end to end', (_, job) => {
    const input = inputOf(job);
    const drawing = read(centrelineDxf(input));
    const { members } = input.plan.frame!;
    members.forEach((member, index) => {
      const layer = `${String(index + 1)} ${member.name}`;
      expect(drawing.tables.layer.layers).toHaveProperty([layer]);
      const entities = drawing.entities.filter((entity) => entity.layer === layer);
      const pieces = member.pieces.filter((piece) => piece.length > 1e-6);
      expect(entities).toHaveLength(pieces.length);
      let total = 0;
      entities.forEach((entity, place) => {
        const piece = pieces[place]!;
        if (isLine(entity)) {
          const [from, to] = entity.vertices as [Vector3, Vector3];
          expect(apart(from, piece.from)).toBeLessThan(1e-6);
          expect(apart(to, piece.to)).toBeLessThan(1e-6);
          total += apart(from, to);
        } else if (isArc(entity) && piece.kind === 'arc') {
          const { start, middle, end, turned } = pointsOfArc(entity);
          expect(apart(start, piece.from)).toBeLessThan(1e-6);
          expect(apart(end, piece.to)).toBeLessThan(1e-6);
          // on the piece's own side of its chord: as far from both ends as half its angle says
          expect(apart(middle, piece.from)).toBeCloseTo(2 * piece.radius * Math.sin(turned / 4), 6);
          expect(turned).toBeCloseTo((piece.angle * Math.PI) / 180, 9);
          total += entity.radius * turned;
        } else expect.unreachable(`${entity.type} for a ${piece.kind}`);
      });
      expect(Math.abs(total - member.developedLength.value)).toBeLessThan(1e-6);
    });
  });

  it('of more than a whole turn keep their length', () => {
    const coil = frameOf([chain('coil', [line(100), arc(500, 300, 0), line(100)])]);
    const arcs = read(centrelineDxf(inputOf(coil))).entities.filter(isArc);
    const length = arcs.reduce((sum, entity) => sum + entity.radius * pointsOfArc(entity).turned, 0);
    expect(length).toBeCloseTo((300 * 500 * Math.PI) / 180, 6);
  });

  it('of names that a layer cannot hold stand in layers of their own', () => {
    const tube = (name: string) =>
      straight(name, [
        [0, 0, 0],
        [100, 0, 0],
      ]);
    const { entities } = read(centrelineDxf(inputOf(frameOf([tube('a/b'), tube('a:b'), tube('Bügel')]))));
    expect(entities.map((entity) => entity.layer)).toEqual(['1 a-b', '2 a-b', '3 Bügel']);
  });
});

describe('the views', () => {
  it.each(frames)('of %s come back point for point, in layers by what is drawn', (_, job) => {
    const input = inputOf(job);
    const { entities, tables } = read(viewsDxf(input));
    const lines = entities.filter((entity): entity is ILwpolylineEntity => entity.type === 'LWPOLYLINE');
    let shift = 0;
    let taken = 0;
    for (const [place, view] of input.plan.views.entries()) {
      const drawn = view.layers.flatMap((layer): { layer: string; points: FlatPoint[] }[] =>
        layer.members.flatMap((member) => [
          ...member.edges.map((edge) => ({ layer: layer.role, points: edge })),
          ...(member.centreline.length > 1 ? [{ layer: `${layer.role}-centreline`, points: member.centreline }] : []),
        ]),
      );
      const found = lines.slice(taken, taken + drawn.length);
      taken += drawn.length;
      shift = place === 0 ? 0 : found[0]!.vertices[0]!.x - drawn[0]!.points[0]![0];
      drawn.forEach(({ layer, points }, index) => {
        expect(found[index]!.layer).toBe(layer);
        expect(tables.layer.layers).toHaveProperty([layer]);
        const { vertices } = found[index]!;
        expect(vertices).toHaveLength(points.length);
        vertices.forEach(({ x, y }, corner) => {
          expect(Math.abs(x - shift - points[corner]![0])).toBeLessThan(1e-6);
          expect(Math.abs(y - points[corner]![1])).toBeLessThan(1e-6);
        });
      });
    }
    expect(lines).toHaveLength(taken);
  });

  it('stand beside each other and carry the sizes of the frame as wanted', () => {
    type Text = { text: string; layer: string; startPoint: { x: number } };
    const textsOf = (input: ExportInput): Text[] =>
      read(viewsDxf(input)).entities.filter((entity) => entity.type === 'TEXT') as unknown as Text[];
    const names = textsOf(inputOf(inSpace())).filter(({ layer }) => layer === 'names');
    expect(names.map(({ text }) => text)).toEqual(['top', 'face', 'side', 'in space']);
    const places = names.map(({ startPoint }) => startPoint.x);
    expect(places.toSorted((a, b) => a - b)).toEqual(places);
    const input = inputOf(landingStage());
    const sizes = textsOf(input).filter(({ layer }) => layer === 'dimensions');
    const wanted = input.plan.views.flatMap((view) => view.dimensions.filter(({ layer }) => layer === 'wanted'));
    expect(sizes).toHaveLength(wanted.length);
    expect(sizes.length).toBeGreaterThan(0);
    for (const { text } of sizes) expect(text).toMatch(/^(R )?\d+(\.\d+)?( mm|°)$/);
  });

  it('of one member hold nothing else', () => {
    const input = inputOf(landingStage(), 'crossbar 1');
    const { entities } = read(viewsDxf(input));
    const wanted = entities.filter((entity) => entity.layer === 'wanted');
    const member = input.plan.views.flatMap((view) =>
      view.layers[0]!.members.filter((one) => one.member === 'crossbar 1'),
    );
    expect(wanted).toHaveLength(member.flatMap(({ edges }) => edges).length);
    expect(viewsDxf(inputOf(landingStage(), 'nobody'))).toMatchObject({ reason: 'no-such-member' });
  });
});
