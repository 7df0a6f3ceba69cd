import { expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import { plan } from '../../server/solver/plan.ts';
import { pagesOf, saidOn } from './laid-pages.ts';

const at = (x: number, z: number) => ({ x, y: 0, z, radius: null });
const post = (name: string, x: number): Extract<Frame, { shape: 'members' }>['members'][number] => ({
  name,
  path: { by: 'points', points: [at(x, 0), at(x, -500)], closed: false },
  start: { end: 'saddle', onto: 'rail' },
  finish: { end: 'free' },
});
const pad = (member: string): Job['fixing'][number] => ({
  fixing: 'pad',
  name: `foot of ${member}`,
  at: { member, spot: 'finish', number: 1, distance: 0 },
  off: { x: 0, y: 0, z: 0 },
  lands: null,
  tolerance: null,
  plate: { thickness: 6, hole: 8 },
});

/** A long rail on two posts with blind saddles and pads: three bores in one set-up, and much to say of each. */
const job: Job = {
  ...newJob('members'),
  units: { length: 'inch', fraction: 16 },
  frame: {
    shape: 'members',
    members: [
      {
        name: 'rail',
        path: { by: 'points', points: [at(-400, 0), at(2200, 0)], closed: false },
        start: { end: 'free' },
        finish: { end: 'free' },
      },
      post('post 1', 0),
      post('post 2', 1000),
    ],
  },
  fixing: [pad('post 1'), pad('post 2')],
  print: { ...newJob('members').print, paper: 'letter' },
};

it('the log goes over to the next page before the picture becomes too small to read', () => {
  const [page, next] = pagesOf('weld-and-purge')(plan(job), job);
  const scale = Number(/scale 1:(\d+)/.exec(saidOn(page!))?.[1]);
  expect(scale).toBeLessThanOrEqual(40);
  expect(saidOn(page!)).toContain('The log is on the next page');
  expect(saidOn(next!)).toMatch(/Set-up 1, continued.*Log, to be filled in by hand/);
});
