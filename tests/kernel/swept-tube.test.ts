// The geometry kernel as an independent witness: it sweeps the same centrelines and measures them itself.
import { beforeAll, describe, expect, it } from 'vitest';
import type { Hoop } from '../../server/job/frame.ts';
import { hoopFrame } from '../../server/solver/frame/hoop-frame.ts';
import { centrelineFromChain, type Centreline, type Link } from '../../server/solver/geometry/centreline.ts';
import { planPieces } from '../../server/solver/geometry/plan-pieces.ts';
import { sectionProperties } from '../../server/solver/tube/section.ts';
import { measureTube, startKernel } from './kernel.ts';

beforeAll(startKernel);

const tube = { outsideDiameter: 38.1, wall: 1.65 };
const radians = (angle: number) => (angle * Math.PI) / 180;

function hoop(width: number, leg: number, crossbar: Hoop['crossbar']): Centreline {
  const result = hoopFrame(
    {
      shape: 'hoop',
      width: { value: width, reference: 'outside' },
      widthAtFeet: { value: width * 0.95, reference: 'centre' },
      leftLeg: { value: leg, reference: 'outside' },
      rightLeg: { value: leg * 1.1, reference: 'inside' },
      crossbar,
      innerCrossbars: [],
    },
    { outsideDiameter: tube.outsideDiameter, cornerRadius: 117, root: '/frame' },
  );
  if ('failure' in result) throw new Error(result.failure);
  const [member] = result.members;
  if (member === undefined) throw new Error('a hoop without its member');
  return member.centreline;
}

/** A run in space with straights, die bends in turned planes and a rolled stretch, laid from a seed. */
function run(seed: number): Centreline {
  let state = seed;
  const next = () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  const links: Link[] = [{ kind: 'straight', length: 200 }];
  for (let bend = 0; bend < 4; bend += 1) {
    const rolled = bend === 2;
    links.push({
      kind: 'arc',
      radius: rolled ? 1200 : 114.3,
      angle: radians(rolled ? 12 : 20 + 70 * next()),
      rotation: bend === 0 ? 0 : radians(40 * (next() - 0.5)),
      made: rolled ? 'rolled' : 'die',
    });
    links.push({ kind: 'straight', length: 150 + 200 * next() });
  }
  return centrelineFromChain(
    { point: { x: 0, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
    links,
  );
}

const frames: [string, Centreline][] = [
  ['hoop, straight', hoop(950, 600, { form: 'straight' })],
  ['hoop, narrow', hoop(420, 300, { form: 'straight' })],
  ['hoop, crowned 2400', hoop(950, 600, { form: 'crowned', radius: 2400 })],
  ['hoop, crowned 1000', hoop(800, 450, { form: 'crowned', radius: 1000 })],
  ...[11, 23, 37, 53, 71, 97, 113].map((seed): [string, Centreline] => [`run in space ${seed}`, run(seed)]),
];

describe('length, metal, bore and surface of swept tubes', () => {
  it.each(frames)('%s', (_, line) => {
    const measured = measureTube(planPieces(line), tube);
    const { area, bore } = sectionProperties(tube);
    const within = (ours: number, theirs: number) => expect(Math.abs(ours / theirs - 1)).toBeLessThan(1e-6);
    within(line.length, measured.length);
    within(area * line.length, measured.volume);
    within((Math.PI / 4) * bore ** 2 * line.length, measured.bore);
    within(Math.PI * tube.outsideDiameter * line.length + (Math.PI / 2) * tube.outsideDiameter ** 2, measured.area);
  });
});
