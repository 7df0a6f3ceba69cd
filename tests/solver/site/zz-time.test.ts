import { it } from 'vitest';
import { at, AXES, HINGE, place, slope, sourceOf, stand, standing, studyOf } from '/work/main/tests/solver/site/standing-site.ts';
import { siteViews } from '/work/main/server/solver/site/views/site-views.ts';
it('time', () => {
  const up = at(0.02, -0.03, Math.sqrt(1 - 0.0013));
  const pairs = (['start', 'corner', 'finish'] as const).map((spot) => ({ at: place(spot), point: spot }));
  const points = { start: at(0, 0, 0), corner: at(10, 580, 0), finish: at(860, 0, 0) };
  const height = { at: place('start'), over: at(0, 0, 0), value: 0, to: 'level' as const };
  const cases = {
    axes: sourceOf({ placing: AXES }),
    hinge: sourceOf({ placing: AXES, ...standing({ hinge: HINGE, slopes: [slope(at(0, 1, 0), 5, 'level')] }) }),
    points: sourceOf({ placing: { by: 'points', pairs } }),
    two: sourceOf({ placing: AXES, ...standing({ slopes: [slope(at(0, 1, 0), 5), slope(at(1, 0, 0), 2)], height }) }),
    mixed: sourceOf({ placing: AXES, ...standing({ slopes: [slope(at(0, 1, 0), 5), slope(at(1, 0, 0), 2, 'level')], height }) }),
  };
  for (const [name, source] of Object.entries(cases)) {
    for (let i = 0; i < 3000; i++) stand(source, { up, points });
    const t = performance.now();
    for (let i = 0; i < 3000; i++) stand(source, { up, points });
    console.log(name, ((performance.now() - t) / 3000 * 1000).toFixed(1), 'µs', stand(source, {up, points}).findings.map(f=>f.code));
  }
  const study = studyOf(cases.hinge, { up, points });
  const t = performance.now();
  for (let i = 0; i < 50; i++) siteViews(study, []);
  console.log('views', ((performance.now() - t) / 50).toFixed(2), 'ms', JSON.stringify(siteViews(study, [])).length);
});
