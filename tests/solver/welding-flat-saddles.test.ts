import { expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { jobWith, line, MAIN, onto, SADDLE, tube, welded } from './welding-frames.ts';

it('tacks of a flat saddle are counted by its weld, which the torch may not reach all round', () => {
  const at = (degrees: number) => {
    const flat = tube('branch', [line(800)], { ends: { start: onto((degrees * Math.PI) / 180) } });
    const { welding, findings } = welded(jobWith({}), { members: [MAIN, flat], places: [SADDLE] });
    const [saddle] = welding.welds;
    const count = saddle!.tacks.count.value;
    expect(saddle!.length.value / count).toBeLessThanOrEqual(80);
    return [count > 3, findings.some(({ code }) => code === 'saddle-acute')];
  };
  expect([90, 45, 30, 29.9, 15].map(at)).toEqual([
    [false, false],
    [false, false],
    [expect.any(Boolean), false],
    [expect.any(Boolean), true],
    [true, true],
  ]);
});

it('a flat saddle of a frame of members is told at its own end', () => {
  const at = (degrees: number) => onto((degrees * Math.PI) / 180);
  const flat = tube('branch', [line(800)], { ends: { finish: at(25), start: at(90) } });
  const typed = newJob('members');
  if (typed.frame.shape !== 'members') throw new Error('a frame of members');
  const [one] = typed.frame.members;
  const members = ['other', 'branch'].map((name) => ({ ...one!, name }));
  const more = { frame: { ...typed.frame, members } };
  const places = [SADDLE, { ...SADDLE, station: 800 }];
  const found = welded(jobWith({ more }), { members: [MAIN, flat], places }).findings.filter(
    ({ code }) => code === 'saddle-acute',
  );
  expect(found.map(({ field, data }) => [field, data['weld']])).toEqual([['/frame/members/1/finish', 'S2']]);
});
