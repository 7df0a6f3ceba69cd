import { Type } from 'typebox';
import { ErrorAnswer, SavedJob, StaleSave } from '../job/saved-job.ts';
import { ListedTaking, Taking } from '../job/stock-row.ts';
import { SHEET_NAMES } from '../sheets/render-sheet.ts';

/** The documents that stand once in the OpenAPI text and are pointed at from everywhere else. */
type KeptDocumentName = 'Machine' | 'KeptSize' | 'OwnGrade' | 'KeptSettings' | 'Rates';
const documentAt = (id: 'Job' | 'Plan' | 'StockBar' | 'StockLayout' | KeptDocumentName) =>
  Type.Unsafe<unknown>({ $ref: `${id}#` });

/** A Job in a request or an answer. In a request it is any value at all until `readJob` has read it. */
export const JobDocument = documentAt('Job');
export const PlanDocument = documentAt('Plan');

export const SavedJobAnswer = Type.Object({ ...SavedJob.properties, job: JobDocument }, { title: 'saved job' });

export const StaleSaveAnswer = Type.Object(
  {
    ...StaleSave.properties,
    yours: JobDocument,
    theirs: SavedJobAnswer,
    base: Type.Union([SavedJobAnswer, Type.Null()]),
  },
  { title: 'stale save' },
);

/** Something that the shop keeps. In a request its document is any value at all until `readKept` has read it. */
export const keptIn = (document: KeptDocumentName) =>
  Type.Object(
    { id: Type.String(), revision: Type.Integer(), savedAt: Type.String(), document: documentAt(document) },
    { title: 'kept' },
  );

export const keptBody = (document: KeptDocumentName) => ({
  document: documentAt(document),
  version: Type.Optional(
    Type.Integer({ minimum: 1, maximum: 999_999_999, title: 'version of the job format', description: 'if older' }),
  ),
});

/** The answer to a save that came second, with both sides; or to a name that another bears, with that other. */
export const staleKeptIn = (document: KeptDocumentName) =>
  Type.Object(
    {
      error: Type.Object({ code: Type.String(), message: Type.String() }),
      yours: Type.Optional(documentAt(document)),
      theirs: Type.Optional(keptIn(document)),
      other: Type.Optional(keptIn(document)),
    },
    { title: 'stale save or name taken' },
  );

/** A bar, and a layout of bars: any value at all until `readStockBar` and `readStockLayout` have read them. */
export const StockBarDocument = documentAt('StockBar');
export const StockLayoutDocument = documentAt('StockLayout');

export const StockRowAnswer = Type.Object(
  { id: Type.String(), revision: Type.Integer(), savedAt: Type.String(), document: StockBarDocument },
  { title: 'row of the stock' },
);

export const StaleStockAnswer = Type.Object(
  {
    error: Type.Object({ code: Type.Literal('stale-save'), message: Type.String() }),
    yours: StockBarDocument,
    theirs: StockRowAnswer,
  },
  { title: 'stale save' },
);

const barsNamed = {
  taken: Type.Array(
    Type.Object({ id: Type.String(), name: Type.String(), count: Type.Integer(), document: StockBarDocument }),
  ),
  returned: Type.Array(Type.Object({ id: Type.String(), document: StockBarDocument })),
};
export const TakingAnswer = Type.Object(
  { ...Taking.properties, layout: StockLayoutDocument, ...barsNamed },
  { title: 'bars taken' },
);
export const ListedTakingAnswer = Type.Object(
  { ...ListedTaking.properties, ...barsNamed },
  { title: 'bars taken, without their pieces' },
);

const LONGEST_ID = 64;
const id = Type.String({ minLength: 1, maxLength: LONGEST_ID, title: 'job id' });
const name = Type.Enum<[...typeof SHEET_NAMES]>([...SHEET_NAMES], { title: 'sheet' });

export const JobParams = Type.Object({ id });
export const KeptParams = Type.Object({ id: Type.String({ minLength: 1, maxLength: LONGEST_ID, title: 'id' }) });
const Numbered = Type.String({ pattern: '^[0-9]{1,9}$', title: 'number' });
export const TakingParams = Type.Object({ number: Numbered });
const QUOTE_FILES = ['quote.pdf', 'quote-working.pdf', 'quote.csv'] as const;
export const QuoteFileParams = Type.Object({
  id,
  number: Numbered,
  file: Type.Enum<[...typeof QUOTE_FILES]>([...QUOTE_FILES], { title: 'file' }),
});
export const RevisionParams = Type.Object({
  id,
  revision: Type.String({ pattern: '^[0-9]{1,9}$', title: 'revision number' }),
});
export const SheetParams = Type.Object({ name });
export const JobSheetParams = Type.Object({ id, name });

/** The refusals that a route can answer with, for the OpenAPI text. */
export const refusals = <const Status extends number>(...statuses: Status[]) =>
  Object.fromEntries(statuses.map((status) => [status, ErrorAnswer])) as Record<Status, typeof ErrorAnswer>;

export const Pdf = {
  description: 'The sheet as a PDF',
  content: { 'application/pdf': { schema: Type.Unsafe<Uint8Array>({ type: 'string', format: 'binary' }) } },
};

/** A quote as it went out, in the form that was asked for. */
export const QuoteFile = {
  description: 'The quote',
  content: {
    'application/pdf': Pdf.content['application/pdf'],
    'text/csv': Pdf.content['application/pdf'],
  },
};
