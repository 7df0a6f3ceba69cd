import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { GasSpot } from '../../server/plan/purge.ts';
import type { FlatPoint, View } from '../../server/plan/view.ts';
import { plan } from '../../server/solver/plan.ts';
import { project } from '../../server/solver/views/projection.ts';

const near = ([x, y]: FlatPoint) => [expect.closeTo(x, 1) as number, expect.closeTo(y, 1) as number];

describe('the views of a whole plan', () => {
  const stage = landingStage();
  const standing = { ...stage, cameBack: null, purge: { ...stage.purge, up: { x: 0, y: 1, z: 0 } } };
  const ringed = newJob('ring');
  const place = (number: number) => ({ member: 'ring', spot: 'middle' as const, number, distance: 0 });
  const toAir = [
    { at: place(1), bore: 6 },
    { at: place(3), bore: 6 },
  ];
  const withPads: Job = {
    ...stage,
    fixing: (['start', 'finish'] as const).map((spot) => ({
      fixing: 'pad',
      name: spot,
      at: { member: 'hoop', spot, number: 1, distance: 0 },
      off: { x: 0, y: 0, z: 0 },
      lands: null,
      tolerance: null,
      plate: { thickness: 6, hole: 12 },
    })),
  };

  it.each<[string, Job]>([
    ['a hoop that came back', stage],
    ['the same made anew', { ...stage, closing: { ...stage.closing, way: 'new-frame' } }],
    ['the same on pads', withPads],
    ['between dams', { ...stage, purge: { ...stage.purge, extent: 'dams' } }],
    ['a new hoop that stands on its feet', standing],
    ['a ring with vent holes', { ...ringed, purge: { ...ringed.purge, holes: { ...ringed.purge.holes, toAir } } }],
  ])('every way runs from its feed to its vent and every weld has its mark: %s', (_, job) => {
    const { purge, welding, views } = plan(job);
    expect(purge!.chambers.length).toBeGreaterThan(0);
    const spot = (view: View, gas: GasSpot): FlatPoint => project(view, gas.point);
    for (const view of views) {
      for (const { number, feed, vents, paths } of purge!.chambers) {
        const flowing = view.gas.filter(({ chamber, flows }) => flows && chamber === number);
        expect(flowing).toHaveLength(paths.length);
        for (const [index, { vent }] of paths.entries()) {
          const { line } = flowing[index]!;
          // a lance through the vent itself lets the gas out at the far end of the bore
          const lanced = feed.member === vents[vent]!.member && feed.station === vents[vent]!.station;
          if (!lanced) expect(line[0]).toEqual(near(spot(view, feed)));
          expect(line.at(-1)).toEqual(near(spot(view, vents[vent]!)));
        }
        const marked = view.marks.filter(({ label, kind }) => kind === 'vent' && label === String(number));
        expect(marked.map((mark) => mark.at)).toEqual(vents.map((gas) => near(spot(view, gas))));
      }
      expect(view.marks.flatMap(({ kind, label }) => (kind === 'joint' ? [label] : []))).toEqual(
        welding!.welds.map(({ name }) => name),
      );
      for (const { line } of view.gas) expect(line.length).toBeGreaterThan(0);
    }
  });
});
