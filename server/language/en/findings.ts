import type { FindingCode } from '../../plan/finding.ts';
import type { FindingText } from './finding-text.ts';
import { findingsBending } from './findings-bending.ts';
import { findingsMaking } from './findings-making.ts';
import { findingsMending } from './findings-mending.ts';
import { findingsRebend } from './findings-rebend.ts';
import { findingsReturned } from './findings-returned.ts';
import { findingsSplice } from './findings-splice.ts';

/** The words of every finding. */
export const findings: Readonly<Record<FindingCode, FindingText>> = {
  ...findingsMaking,
  ...findingsBending,
  ...findingsMending,
  ...findingsRebend,
  ...findingsReturned,
  ...findingsSplice,
};
