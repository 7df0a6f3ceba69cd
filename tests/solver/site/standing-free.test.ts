import { describe, expect, it } from 'vitest';
import { findings as words } from '../../../server/language/en/findings.ts';
import { dot, length, subtract } from '../../../server/solver/geometry/vector.ts';
import { type LaidSite } from '../../../server/solver/site/laid-site.ts';
import { framePlace } from '../../../server/solver/site/standing/frame-place.ts';
import { placingDoubts } from '../../../server/solver/site/standing/placing-doubts.ts';
import { planStanding } from '../../../server/solver/site/standing/plan-standing.ts';
import { standFrame } from '../../../server/solver/site/standing/stand-frame.ts';
import { faultsOf } from '../figures-in.ts';
import { at, place, sourceOf, stand, studyOf, UPRIGHT, AXES, HINGE, standing, slope, codes } from './standing-site.ts';

describe('a frame without a hinge', () => {
  it('is lifted to a height, along what it counts along, and not turned', () => {
    const up = at(0.6, 0, 0.8);
    const height = { at: place('start'), over: at(1, 2, 3), value: 250, to: 'level' as const };
    const source = sourceOf({ ...standing({ height }) });
    const { frame } = stand(source, { up });
    const foot = framePlace(frame, source.wanted)(place('start'))!.point;
    expect(dot(subtract(foot, at(1, 2, 3)), up)).toBeCloseTo(250, 9);
    expect(frame!.turn).toBe(0);
    const plan = planStanding(studyOf(source, { up })).standing!;
    expect(plan.height!.value).toBeCloseTo(250, 9);
    expect(plan.turn).toBeNull();
  });

  it('turns about the place whose height is asked for, and about its middle without one', () => {
    const slopes = [slope(at(1, 0, 0), 12)];
    const height = { at: place('start'), over: at(0, 0, 0), value: 0, to: 'structure' as const };
    const source = sourceOf({ ...standing({ slopes, height }) });
    const start = source.made[0]!.centreline.pieces[0]!.start;
    const foot = framePlace(stand(source).frame, source.wanted)(place('start'))!.point;
    expect(length(subtract(foot, start))).toBeLessThan(1e-9);
    const free = stand(sourceOf({ ...standing({ slopes }) })).frame!;
    const feet = free.lines[0]!.centreline;
    const low = feet.pieces[0]!.start;
    // half the width of 900 mm over the outside, less half a tube
    expect(low.x + 0).toBeCloseTo(-(900 - 38.1) * 0.5 * Math.cos((12 * Math.PI) / 180), 6);
  });

  it('cannot have two slopes along nearly one line, or steeper together than a plane allows', () => {
    const nearly = [slope(at(1, 0, 0), 1), slope(at(100, 1, 0), 2)];
    expect(codes(sourceOf({ ...standing({ slopes: nearly }) }))).toEqual([
      ['slopes-at-odds', 'stop', '/site/standing/slopes/1'],
    ]);
    for (const to of ['structure', 'level'] as const) {
      const steep = [slope(at(1, 0, 0), 50), slope(at(0, 1, 0), 50, to)];
      expect(codes(sourceOf({ ...standing({ slopes: steep }) }), { up: at(0, 0.1, Math.sqrt(0.99)) })[0]![0]).toBe(
        'slopes-at-odds',
      );
    }
  });

  it('asks for a direction that has a length, and leaves the frame as it was placed', () => {
    const { frame, findings } = stand(sourceOf({ ...standing({ slopes: [slope(at(0, 0, 0), 5)] }) }));
    expect(findings).toMatchObject([{ code: 'direction-none', field: '/site/standing/slopes/0/along' }]);
    expect(frame!.motion).toEqual(stand(sourceOf()).frame!.motion);
  });
});

describe('what is in doubt', () => {
  it('is where the origin is and over what a height counts, where they are coordinates', () => {
    const height = { at: place('start'), over: at(0, 0, 0), value: 0, to: 'structure' as const };
    const { site } = sourceOf({ tapeAccuracy: 3, ...standing({ height }) });
    expect(placingDoubts(site).map(({ field, plusMinus }) => [field, plusMinus])).toEqual(
      ['/site/placing/origin', '/site/standing/height/over'].flatMap((field) =>
        ['x', 'y', 'z'].map((axis) => [`${field}/${axis}`, 3]),
      ),
    );
    expect(placingDoubts({ ...site, placing: { ...AXES, origin: { named: 'A' } } })).toHaveLength(3);
  });

  it('shows as a band: of a slope against level by the reading, of a height by the tape', () => {
    const level = Math.PI / 1800;
    const source = sourceOf({ ...standing({ height: null }) });
    const { laid } = studyOf(source);
    const tilted: LaidSite = { ...laid, up: at(Math.sin(level), 0, Math.cos(level)) };
    const off = (field: string) => (field === '/site/placing/origin/z' ? 2 : 0);
    const lifted = standFrame(source, { levels: [], up: UPRIGHT, points: new Map(), off }).frame;
    const study = {
      source,
      laid,
      varied: [
        {
          doubt: { field: '/site/level/sets/0/readings/0', plusMinus: 0.1, from: 'level' as const, name: '' },
          off: 0.1,
          laid: tilted,
        },
        {
          doubt: { field: '/site/placing/origin/z', plusMinus: 2, from: 'placing' as const, name: '' },
          off: 2,
          laid: { ...laid, frame: lifted },
        },
      ],
    };
    const { standing: plan } = planStanding(study);
    const [x] = plan!.slopes;
    expect(x!.toLevel.band!.plusMinus).toBeCloseTo(0.1, 6);
    expect(x!.toStructure.band).toBeNull();
    const height = { at: place('start'), over: at(0, 0, 0), value: 0, to: 'structure' as const };
    const doubt = { field: '/site/standing/height/over/z', plusMinus: 2, from: 'placing' as const, name: '' };
    const asked = sourceOf({ ...standing({ height, hinge: HINGE, slopes: [slope(at(0, 1, 0), 5)] }) });
    const known = studyOf(asked);
    const follows = planStanding({ ...known, varied: [{ doubt, off: 2, laid: { ...known.laid } }] });
    expect(follows.standing!.height!.band!.plusMinus).toBeCloseTo(2, 9);
  });

  it('gives figures that name what went in, and findings that have words', () => {
    const pairs = (['start', 'corner', 'finish'] as const).map((spot) => ({ at: place(spot), point: spot }));
    const points = { start: at(0, 0, 0), corner: at(10, 580, 0), finish: at(860, 0, 0) };
    const height = { at: place('start'), over: at(0, 0, 0), value: 0, to: 'level' as const };
    for (const slopes of [[], [slope(at(0, 1, 0), 5)], [slope(at(0, 1, 0), 5), slope(at(1, 0, 0), 2, 'level')]]) {
      for (const hinge of [null, HINGE]) {
        const source = sourceOf({ placing: { by: 'points', pairs }, ...standing({ slopes, hinge, height }) });
        const plan = planStanding(studyOf(source, { points, up: at(0.02, 0, Math.sqrt(1 - 0.0004)) }));
        expect(faultsOf(plan.standing)).toEqual([]);
        expect(plan.findings.map(({ code }) => words[code]).every((text) => text.text.length > 0)).toBe(true);
        expect(stand(source, { points }).frame).not.toBeNull();
      }
    }
  });
});
