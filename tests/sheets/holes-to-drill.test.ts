import { expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Job } from '../../server/job/job.ts';
import { layoutSheet } from '../../server/sheets/render-sheet.ts';
import { plan } from '../../server/solver/plan.ts';

function said(job: Job): string {
  const laid = layoutSheet('weld-and-purge', { plan: plan(job), job, revision: null });
  if (!laid.ok) throw new Error(laid.reason);
  return laid.pages.flatMap(({ items }) => items.flatMap((one) => (one.kind === 'text' ? [one.text] : []))).join(' ');
}

it('holes under saddles are drilled where they are welded now, and looked at where they were welded before', () => {
  const came = landingStage();
  expect(said(came)).toMatch(/These ends were welded before.*crossbar 1, datum end; crossbar 1, far end/);
  expect(said(came)).not.toContain('drill a hole');
  const made = said({ ...came, cameBack: null });
  expect(made).toMatch(/Before anything is tacked, drill a hole of 16 mm.*crossbar 1, datum end/);
  expect(made).not.toContain('welded before');
});
