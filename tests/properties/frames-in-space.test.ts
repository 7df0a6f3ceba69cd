import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Frame, RunPoint } from '../../server/job/frame.ts';
import { rotate, unit } from '../../server/solver/geometry/vector.ts';
import { between, firstDifference, jobWith, plannedFrame } from './plans-compared.ts';
import { BENCH, halfTurn, planned, runOf, table, turn, turns, walked } from './walked-runs.ts';

const RUNS = { numRuns: 40, seed: 2 };

describe('a run', () => {
  it('bent from its other end has the same bends in reverse and the same turns one bend on', () => {
    fc.assert(
      fc.property(turns, (of) => {
        const { points } = walked(of);
        const there = table(planned(runOf(points)));
        const back = table(planned(runOf([...points].reverse())));
        fc.pre(!halfTurn(there));
        const { steps } = there;
        const order = [...steps].reverse();
        const wanted = {
          steps: order.map((step, index) => ({
            ...step,
            feed: index === 0 ? there.lastStraight : order[index - 1]!.feed,
            rotation: index === 0 ? 0 : order[index - 1]!.rotation,
          })),
          lastStraight: steps[0]!.feed,
          cutLength: there.cutLength,
        };
        expect(firstDifference(back, wanted, 1e-8)).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('seen in a mirror has the same straights and bends and turns the other way', () => {
    fc.assert(
      fc.property(turns, (of) => {
        const { points } = walked(of);
        const here = table(planned(runOf(points)));
        fc.pre(!halfTurn(here));
        const mirrored = table(planned(runOf(points.map((point) => ({ ...point, z: -point.z })))));
        const wanted = { ...here, steps: here.steps.map((step) => ({ ...step, rotation: -step.rotation })) };
        expect(firstDifference(mirrored, wanted, 1e-8)).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('is turned the other way by a machine that counts the other way', () => {
    fc.assert(
      fc.property(turns, (of) => {
        const frame = runOf(walked(of).points);
        const here = table(planned(frame));
        const turned = plannedFrame(jobWith(frame, { ...BENCH, machine: { ...BENCH.machine, rotationSign: -1 } }))
          .members[0]!;
        const wanted = { ...here, steps: here.steps.map((step) => ({ ...step, rotation: -step.rotation })) };
        expect(firstDifference(table(turned), wanted, 1e-12)).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('moved and turned in space is bent just the same', () => {
    const axis = fc.tuple(between(-1, 1), between(-1, 1), between(0.1, 1)).map(([x, y, z]) => unit({ x, y, z })!);
    const shift = fc.record({ x: between(-9e3, 9e3), y: between(-9e3, 9e3), z: between(-9e3, 9e3) });
    fc.assert(
      fc.property(turns, axis, between(-3, 3), shift, (of, about, angle, by) => {
        const { points } = walked(of);
        const moved = points.map(({ radius, ...point }): RunPoint => {
          const turned = rotate(point, about, angle);
          return { x: turned.x + by.x, y: turned.y + by.y, z: turned.z + by.z, radius };
        });
        const here = table(planned(runOf(points)));
        fc.pre(!halfTurn(here));
        expect(firstDifference(table(planned(runOf(moved))), here, 1e-8)).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('with tube, die and points k times as large has all lengths k times as long and the same angles', () => {
    const factor = fc.constantFrom(1e-2, 0.5, 2, 8);
    const pieces = fc.array(turn, { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(pieces, factor, (of, k) => {
        const { points } = walked(of);
        const larger = points.map(({ x, y, z, radius }): RunPoint => {
          return { x: k * x, y: k * y, z: k * z, radius: radius === null ? null : k * radius };
        });
        const at = (scale: number, frame: Frame) =>
          plannedFrame(
            jobWith(frame, {
              tube: { outsideDiameter: 38.1 * scale, wall: 1.65 * scale },
              machine: BENCH.machine!,
              die: { ...BENCH.die, radius: 114.3 * scale },
            }),
          ).members[0]!;
        const here = table(at(1, runOf(points)));
        fc.pre(!halfTurn(here));
        const wanted = {
          steps: here.steps.map((step) => ({
            ...step,
            feed: k * step.feed,
            dieRadius: k * step.dieRadius,
            arcLength: k * step.arcLength,
          })),
          lastStraight: k * here.lastStraight,
          cutLength: k * here.cutLength,
        };
        expect(firstDifference(table(at(k, runOf(larger))), wanted, 1e-8)).toBeUndefined();
      }),
      RUNS,
    );
  });
});
