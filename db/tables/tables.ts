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

export type Tables = { jobs: JobsTable; revisions: RevisionsTable };
