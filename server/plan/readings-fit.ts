import { Type, type Static } from 'typebox';
import { Figure, literals } from './figure.ts';

/** What the words of a key need. */
export const Data = Type.Record(Type.String(), Type.Union([Type.Number(), Type.String()]));

/** A key of the language catalogue with what its words need. */
export const Said = Type.Object({ key: Type.String(), data: Data });
export type Said = Static<typeof Said>;

/** A check dimension as wanted, as it came back (fitted), and the difference, all with the reference it was typed in. */
export const Difference = Type.Object({
  key: Type.String(),
  index: Type.Integer(),
  /** Where it is read: the reading in the Job, or empty where nobody measured it. */
  field: Type.String(),
  reference: literals(['outside', 'centre', 'inside'], 'reference'),
  wanted: Figure,
  cameBack: Figure,
  difference: Figure,
});
export type Difference = Static<typeof Difference>;

/** One reading beside what the fitted frame has there. A point in space has three, x, y and z. */
export const FittedReading = Type.Object({
  /** JSON pointer of the reading in the Job. */
  field: Type.String(),
  /** Name of the size, or of the kind of reading, as a language key with its data. */
  name: Said,
  wanted: Figure,
  measured: Figure,
  fitted: Figure,
  /** Measured less fitted. */
  residual: Figure,
  /** The residual in accuracies of the reading. */
  accuracies: Type.Number(),
  /** True for the reading that disagrees with all the others. */
  disagrees: Type.Boolean(),
});
export type FittedReading = Static<typeof FittedReading>;

/** How well one frame explains all the readings. */
export const ReadingsFit = Type.Object({
  readings: Type.Array(FittedReading),
  /** Sizes of the frame that the readings say something about, and how many readings are more than needed for that. */
  unknowns: Type.Integer(),
  spare: Type.Integer(),
  /** Root of the mean square of the residuals, in accuracies. */
  misfit: Figure,
  /** Why the readings do not agree, where they do not. */
  doubt: Type.Union([Said, Type.Null()]),
  /** Sizes of the frame that nobody measured and that the others do not give: taken as wanted. */
  notMeasured: Type.Array(Type.Object({ key: Type.String(), index: Type.Integer() })),
});
export type ReadingsFit = Static<typeof ReadingsFit>;
