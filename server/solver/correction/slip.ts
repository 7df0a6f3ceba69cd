import type { SlipKey } from '../../plan/slip.ts';

/** One slip: what it is, the sizes that it reads another way, the other die, the one bend that it is about. */
export type Slip = {
  readonly key: SlipKey;
  readonly fields: readonly string[];
  readonly dieRadius: number | null;
  readonly bend: { readonly member: string; readonly number: number } | null;
};
