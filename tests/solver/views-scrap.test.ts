import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { WayKey } from '../../server/plan/correction.ts';
import type { FlatPoint } from '../../server/plan/view.ts';
import { plan } from '../../server/solver/plan.ts';

const along = (edge: readonly FlatPoint[] = []): number =>
  edge
    .slice(1)
    .reduce((sum, [x, y], index) => sum + Math.hypot(x - (edge[index]?.[0] ?? 0), y - (edge[index]?.[1] ?? 0)), 0);

const ofWay = (way: WayKey) => {
  const job = landingStage();
  return plan({ ...job, closing: { ...job.closing, way } });
};

describe('the scrap of a splice', () => {
  it.each(['splice-one', 'splice-two', 'splice-turned'] as const)(
    'is drawn between the marks of its faces, inside and outside: %s',
    (way) => {
      const made = ofWay(way);
      const joints = made.correction?.ways.find(({ key }) => key === way)?.joints ?? [];
      const scrap = made.views[0]?.layers.find(({ role }) => role === 'scrap');
      expect(scrap?.members).toHaveLength(joints.length);
      expect(joints.length).toBeGreaterThan(0);
      for (const [index, joint] of joints.entries()) {
        const drawn = scrap!.members[index]!.edges.slice(0, 2).map(along);
        const marked = [0, 2].map(
          (at) => joint.faceB.generators[at]!.distance.value - joint.faceA.generators[at]!.distance.value,
        );
        // outlines are rounded to a hundredth, and chords cut a rolled arc short by less
        expect(drawn.toSorted()).toEqual(marked.toSorted().map((length) => expect.closeTo(length, 1) as number));
      }
    },
  );

  it('is nothing where nothing is cut out', () => {
    expect(ofWay('rebend').views[0]?.layers.map(({ role }) => role)).not.toContain('scrap');
  });
});
