import { expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { changedNames } from '../../web/state/conflict-names.ts';
import { changedFields } from '../../web/state/merge.ts';
import { withOwnValue } from '../../web/state/rates.ts';

it('a value of the shop that changed is named once, however much is kept of it', () => {
  const job = newJob('hoop');
  const mine = withOwnValue(
    withOwnValue(job, '/rates/margin', 14, '2026-11-26'),
    '/rates/labour/bend/hour',
    1,
    '2026-11-26',
  );
  expect(changedFields(job, mine).filter((field) => field.startsWith('/rates/margin'))).toHaveLength(3);
  expect([...changedNames(changedFields(job, mine))].sort()).toEqual(['bending, each hour', 'margin']);
  expect(changedNames(['/tube/wall', '/tube/wall', '/title'])).toHaveLength(2);
});
