import type { Draft } from './job-saver.svelte.ts';

/**
 * Unsaved work is kept on this machine too, so that a lost signal and a closed page lose nothing. Each tab keeps its
 * own, because two of them may work on one job.
 */
const TAB = 'hoopwright.tab';

/** The name of this tab, the same after a reload. */
function tab(): string {
  const known = sessionStorage.getItem(TAB);
  if (known !== null) return known;
  const fresh = `${String(Date.now())}-${Math.random().toString(36).slice(2)}`;
  sessionStorage.setItem(TAB, fresh);
  return fresh;
}

type Drafts<Kept> = {
  readonly keep: (id: string, draft: Kept) => void;
  readonly forget: (id: string) => void;
  /** This tab's unsaved work on a thing, else what another tab left behind; null where there is none. */
  readonly read: (id: string) => Kept | null;
};

/** Unsaved work of one kind, each by the id of what it is on. */
export function draftsOf<Kept>(kind: string): Drafts<Kept> {
  const startOf = (id: string): string => `hoopwright.${kind}.${id}.`;
  const ownKey = (id: string): string => startOf(id) + tab();
  /** Work that another tab left behind and this one took up: forgotten together with this tab's own. */
  const takenUp = new Map<string, string>();
  return {
    keep(id, draft) {
      localStorage.setItem(ownKey(id), JSON.stringify(draft));
    },
    forget(id) {
      localStorage.removeItem(ownKey(id));
      const other = takenUp.get(id);
      if (other !== undefined) localStorage.removeItem(other);
      takenUp.delete(id);
    },
    read(id) {
      const keys = Array.from({ length: localStorage.length }, (_, index) => localStorage.key(index) ?? '');
      const own = ownKey(id);
      const key = keys.includes(own) ? own : keys.find((one) => one.startsWith(startOf(id)));
      const text = key === undefined ? null : localStorage.getItem(key);
      if (key === undefined || text === null) return null;
      if (key !== own) takenUp.set(id, key);
      return JSON.parse(text) as Kept;
    },
  };
}

export const { keep: keepDraft, forget: forgetDraft, read: readDraft } = draftsOf<Draft>('unsaved');

const LAST = 'hoopwright.last';

/** The job that was open last on this machine; null on a first visit. */
export const lastJob = (): string | null => localStorage.getItem(LAST);
export const rememberJob = (id: string): void => {
  localStorage.setItem(LAST, id);
};
export const forgetLastJob = (): void => {
  localStorage.removeItem(LAST);
};
