import type { Generated } from 'kysely';

/** One job. The texts that find it are those of its latest revision. */
export type JobsTable = {
  id: string;
  created_at: string;
  /** ISO 8601, or null while the job stands in the list. */
  deleted_at: string | null;
  revision: number;
  saved_at: string;
  title: string;
  customer: string;
  drawing_number: string;
  invented: number;
  /** Title, customer, drawing number and note in lower case, for the search. */
  search_text: string;
};

/** One save of a job, never changed afterwards: the document as it was saved, as JSON. */
export type RevisionsTable = {
  job_id: string;
  number: number;
  saved_at: string;
  title: string;
  document: string;
};

/** A machine, a size, a grade, weld settings or rates that the shop keeps: its latest save. */
export type KeptTable = {
  id: string;
  kind: 'machine' | 'size' | 'grade' | 'settings' | 'rates';
  name: string;
  /** The name as it is compared: two kept things of one kind never share it. */
  name_key: string;
  /** Version of the job format that the document was written in. */
  version: number;
  document: string;
  revision: number;
  saved_at: string;
  /** ISO 8601, or null while the thing stands in the shop. */
  deleted_at: string | null;
};

/** One row of the shop's stock: bars of one kind, or a remnant, as its latest save or taking left it. */
export type StockTable = {
  id: string;
  name: string;
  /** Version of the job format that the document was written in. */
  version: number;
  document: string;
  revision: number;
  saved_at: string;
  /** ISO 8601, or null while the row stands in the stock. */
  deleted_at: string | null;
};

/** What was taken of the stock at once, and the offcuts that came back. */
export type TakingsTable = {
  number: Generated<number>;
  /** Made by who asks: the same request sent again takes nothing more. */
  key: string;
  taken_at: string;
  job_id: string | null;
  /** Every job, where the bars are cut for several at once, as JSON. */
  together: string;
  title: string;
  /** Version of the job format that the documents below were written in. */
  version: number;
  /** The layout, the rows that bars were taken of, and the remnants that came back, each as JSON. */
  layout: string;
  taken: string;
  returned: string;
  /** ISO 8601, or null while the bars are gone. */
  undone_at: string | null;
};

/** A quote as it went out, never changed afterwards: the job and its quote as they were, as JSON, and what the list says. */
export type QuotesTable = {
  job_id: string;
  number: number;
  job_revision: number;
  issued_at: string;
  /** Version of the job format that the job was written in. */
  version: number;
  job: string;
  /** Version of the form that the quote was written in. */
  quote_version: number;
  quote: string;
  reference: string;
  date: string;
  valid_until: string;
  scope: string;
  total: number;
  currency: string;
  minor_digits: number;
  open: number;
  examples: number;
};

export type Tables = {
  jobs: JobsTable;
  revisions: RevisionsTable;
  kept: KeptTable;
  stock: StockTable;
  takings: TakingsTable;
  quotes: QuotesTable;
};
