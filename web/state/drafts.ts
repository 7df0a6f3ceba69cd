import type { Draft } from './job-saver.svelte.ts';

/**
 * Unsaved work is kept on this machine too, so that a lost signal and a closed page lose nothing. Each tab keeps its
 * own, because two of them may work on one job.
 */
const TAB = 'hoopwright.tab';
const startOf = (id: string): string => `hoopwright.unsaved.${id}.`;

/** The name of this tab, the same after a reload. */
function tab(): string {
  const known = sessionStorage.getItem(TAB);
  if (known !== null) return known;
  const fresh = `${String(Date.now())}-${Math.random().toString(36).slice(2)}`;
  sessionStorage.setItem(TAB, fresh);
  return fresh;
}

const ownKey = (id: string): string => startOf(id) + tab();

/** Work that another tab left behind and this one took up, by job: forgotten together with this tab's own. */
const takenUp = new Map<string, string>();

export const keepDraft = (id: string, draft: Draft): void => {
  localStorage.setItem(ownKey(id), JSON.stringify(draft));
};

export function forgetDraft(id: string): void {
  localStorage.removeItem(ownKey(id));
  const other = takenUp.get(id);
  if (other !== undefined) localStorage.removeItem(other);
  takenUp.delete(id);
}

/** This tab's unsaved work on a job, else what another tab left behind; null where there is none. */
export function readDraft(id: string): Draft | null {
  const keys = Array.from({ length: localStorage.length }, (_, index) => localStorage.key(index) ?? '');
  const own = ownKey(id);
  const key = keys.includes(own) ? own : keys.find((one) => one.startsWith(startOf(id)));
  const text = key === undefined ? null : localStorage.getItem(key);
  if (key === undefined || text === null) return null;
  if (key !== own) takenUp.set(id, key);
  return JSON.parse(text) as Draft;
}

const LAST = 'hoopwright.last';

/** The job that was open last on this machine; null on a first visit. */
export const lastJob = (): string | null => localStorage.getItem(LAST);
export const rememberJob = (id: string): void => {
  localStorage.setItem(LAST, id);
};
export const forgetLastJob = (): void => {
  localStorage.removeItem(LAST);
};
