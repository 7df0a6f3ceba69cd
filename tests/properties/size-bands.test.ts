import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bentMember, movement, sawnLonger, targetOf, type Movement } from '../../server/solver/frame/bend-errors.ts';
import { placeAt, type Centreline } from '../../server/solver/geometry/centreline.ts';
import { reverseCentreline } from '../../server/solver/geometry/reverse-centreline.ts';
import { dot, length, subtract, unit, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { between } from './plans-compared.ts';
import { cornerOf, endOf, none, recipe, relaid, type Off, type Recipe } from './relaid.ts';

/** Members of two to five bends in any plane, on one radius. */
const members: fc.Arbitrary<Recipe> = fc
  .record({
    steps: fc.array(fc.tuple(between(80, 400), between(-175, 175), between(15, 140)), { minLength: 2, maxLength: 5 }),
    last: between(80, 500),
    radius: between(50, 150),
  })
  .map(({ steps, last, radius }) => recipe(steps, last, radius));

/** Places of a tube that a size is measured to: its station as planned, and where it is however the tube came out. */
type Placed = { readonly station: number; readonly at: (line: Centreline) => Vector3 };

function placesOf(made: Recipe): Placed[] {
  const straights: Placed[] = [];
  const corners: Placed[] = [];
  let station = 0;
  const on = (at: number): Placed => ({ station: at, at: (line) => placeAt(line, at)!.point });
  for (const [index, { before, angle, radius }] of made.bends.entries()) {
    straights.push(on(station + before / 2));
    corners.push({ station: station + before + (radius * angle) / 2, at: (line) => cornerOf(line, index) });
    station += before + radius * angle;
  }
  const far: Placed = { station: station + made.last, at: endOf };
  return [on(0), ...straights, on(station + made.last / 2), far, ...corners];
}

type Kind = keyof Movement;
const KINDS: readonly Kind[] = ['angle', 'mark', 'rotation', 'radius'];

/** One bend off by so much, and nothing else. */
const offBy = (bends: number, kind: Kind, index: number, by: number): Off => {
  const off = none(bends);
  return { ...off, [kind]: off[kind].map((_, place) => (place === index ? by : 0)) };
};

/** Change of the size between two places for one unit of something, by laying the tube again a little either way. */
const bySteps = (made: Recipe, places: readonly [Placed, Placed], off: (by: number) => Off, step: number): number => {
  const size = (by: number) => {
    const line = relaid(made, off(by));
    return length(subtract(places[1].at(line), places[0].at(line)));
  };
  return (size(step) - size(-step)) / (2 * step);
};

describe('how a size moves where a bend is a little wrong', () => {
  it.each(['start', 'finish'] as const)('is what laying the tube again says, bent from its %s', (from) => {
    const compared = { moved: 0, still: 0 };
    fc.assert(
      fc.property(members, fc.nat(), fc.nat(), (made, one, other) => {
        const bends = made.bends.length;
        const places = placesOf(made);
        const pair = [places[one % places.length]!, places[other % places.length]!] as const;
        const planned = relaid(made, none(bends));
        const [near, far] = [pair[0].at(planned), pair[1].at(planned)];
        const size = length(subtract(far, near));
        fc.pre(size > 60);
        const along = unit(subtract(far, near))!;
        const whole = planned.length;
        const member = bentMember(from === 'start' ? planned : reverseCentreline(planned), from);
        const spot = (place: Placed, point: Vector3) => {
          return targetOf(member, { station: from === 'start' ? place.station : whole - place.station, point });
        };
        const targets = [spot(pair[0], near), spot(pair[1], far)] as const;
        const agree = (ours: number, theirs: number) => {
          compared[Math.abs(theirs) > 1e-3 ? 'moved' : 'still'] += 1;
          expect(Math.abs(ours - theirs)).toBeLessThan(1e-5 * Math.max(1, Math.abs(theirs)));
        };
        expect(member.bends).toHaveLength(bends);
        for (const [index, bend] of member.bends.entries()) {
          for (const kind of KINDS) {
            const moves = targets.map((target) => movement(member, target, bend)[kind]);
            const ours = dot(along, subtract(moves[1]!, moves[0]!));
            const step = kind === 'mark' || kind === 'radius' ? 1e-2 : 1e-4;
            agree(
              ours,
              bySteps(made, pair, (by) => offBy(bends, kind, index, by), step),
            );
          }
        }
        const longer = dot(along, subtract(sawnLonger(member, targets[1]), sawnLonger(member, targets[0])));
        agree(
          longer,
          bySteps(made, pair, (sawn) => ({ ...none(bends), sawn }), 1e-2),
        );
      }),
      { numRuns: 250 },
    );
    expect(compared.moved).toBeGreaterThan(1500);
    expect(compared.still).toBeGreaterThan(500);
  });
});
