import type { Operation } from '../../job/rates.ts';
import type { QuotePart } from '../../plan/quote.ts';
import { byOperation, OPERATIONS } from './operations.ts';
import type { Quantities } from './quantities.ts';

type ByOperation = Readonly<Record<Operation, number>>;

/** Two pieces of work done together, so that what each order takes once is taken once. */
export function addQuantities(one: Quantities, other: Quantities): Quantities {
  const added = (pick: (quantities: Quantities) => ByOperation): ByOperation =>
    byOperation((operation) => pick(one)[operation] + pick(other)[operation]);
  return {
    pieces: [...one.pieces, ...other.pieces],
    counts: added(({ counts }) => counts),
    metres: added(({ metres }) => metres),
    process: added(({ process }) => process),
    purgeGas: one.purgeGas + other.purgeGas,
    torchGas: one.torchGas + other.torchGas,
    filler: one.filler + other.filler,
    welds: one.welds + other.welds,
    anew: one.anew === true || other.anew === true,
    parts: Object.fromEntries(
      (['gas', 'filler', ...OPERATIONS] as const).map((key) => [
        key,
        addedParts([...(one.parts[key] ?? []), ...(other.parts[key] ?? [])]),
      ]),
    ),
  };
}

/** Parts of one key and name are one. */
function addedParts(parts: readonly QuotePart[]): QuotePart[] {
  const added = new Map<string, QuotePart>();
  for (const part of parts) {
    const place = `${part.key} ${part.name}`;
    const known = added.get(place);
    added.set(place, known === undefined ? part : { ...known, value: known.value + part.value });
  }
  return [...added.values()];
}
