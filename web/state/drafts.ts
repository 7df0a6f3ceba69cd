import type { Draft } from './job-saver.svelte.ts';

/** Unsaved work is kept on this machine too, so that a lost signal and a closed page lose nothing. */
const keyOf = (id: string): string => `hoopwright.unsaved.${id}`;
const LAST = 'hoopwright.last';

export const keepDraft = (id: string, draft: Draft): void => {
  localStorage.setItem(keyOf(id), JSON.stringify(draft));
};

export const forgetDraft = (id: string): void => {
  localStorage.removeItem(keyOf(id));
};

export function readDraft(id: string): Draft | null {
  const text = localStorage.getItem(keyOf(id));
  return text === null ? null : (JSON.parse(text) as Draft);
}

/** The job that was open last on this machine; null on a first visit. */
export const lastJob = (): string | null => localStorage.getItem(LAST);
export const rememberJob = (id: string): void => {
  localStorage.setItem(LAST, id);
};
export const forgetLastJob = (): void => {
  localStorage.removeItem(LAST);
};
