import type { Item } from './ink.ts';
import type { Turn } from './paper.ts';

/** A page before its border and title block: what stands on it and which scale is said. */
export type Draft = {
  readonly turn: Turn;
  readonly scale: string;
  readonly items: readonly Item[];
  /** What of the document the page is about, where its pages are about different things. */
  readonly about?: string;
};

/** A page ready to paint [mm]. */
export type Page = { readonly width: number; readonly height: number; readonly items: readonly Item[] };

/** Why a sheet cannot be made. The language catalogue has words for each (`sheet.reason.<code>`). */
export const SHEET_REASONS = [
  'frame-not-possible',
  'nothing-to-cut-or-purge',
  'nothing-to-weld',
  'nothing-came-back',
  'quote-not-possible',
  'nothing-to-saw',
  'no-legs',
  'nothing-of-the-site',
] as const;
export type SheetReason = (typeof SHEET_REASONS)[number];

export type Drafts =
  { readonly ok: true; readonly drafts: readonly Draft[] } | { readonly ok: false; readonly reason: SheetReason };
