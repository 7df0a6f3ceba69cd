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

/** A machine, a size, a grade or weld settings that the shop keeps: its latest save. */
export type KeptTable = {
  id: string;
  kind: 'machine' | 'size' | 'grade' | 'settings';
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

export type Tables = { jobs: JobsTable; revisions: RevisionsTable; kept: KeptTable };
