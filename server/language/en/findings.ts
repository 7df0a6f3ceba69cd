import type { FindingCode } from '../../plan/finding.ts';
import type { FindingText } from './finding-text.ts';
import { findingsBending } from './findings-bending.ts';
import { findingsFinish } from './findings-finish.ts';
import { findingsLegs } from './findings-legs.ts';
import { findingsMaking } from './findings-making.ts';
import { findingsMending } from './findings-mending.ts';
import { findingsPurge } from './findings-purge.ts';
import { findingsQuote } from './findings-quote.ts';
import { findingsRebend } from './findings-rebend.ts';
import { findingsReturned } from './findings-returned.ts';
import { findingsRoom } from './findings-room.ts';
import { findingsSite } from './findings-site.ts';
import { findingsSplice } from './findings-splice.ts';
import { findingsWelding } from './findings-welding.ts';

/** The words of every finding. */
export const findings: Readonly<Record<FindingCode, FindingText>> = {
  ...findingsMaking,
  ...findingsBending,
  ...findingsMending,
  ...findingsRebend,
  ...findingsReturned,
  ...findingsSplice,
  ...findingsPurge,
  ...findingsRoom,
  ...findingsWelding,
  ...findingsFinish,
  ...findingsSite,
  ...findingsLegs,
  ...findingsQuote,
};
