import { source } from './source.ts';

/** What bars and money rest on. */
export const quoteSources = {
  'bar-bookkeeping': source(
    'Pieces, kerfs, end trim and offcut of a bar',
    'n pieces take their sum and n − 1 kerfs, one more where an offcut is left; derived',
    'derivation',
  ),
  'first-fit': source('Longest piece first into the first bar that has room', 'first fit decreasing', 'practice'),
  'fewest-bars': source(
    'Martello and Toth, Lower bounds and reduction procedures for the bin packing problem',
    'Discrete Applied Mathematics 28 (1990), bound L2; from memory. Pieces and bar are one kerf longer; derived',
    'paper',
  ),
  'cutting-stock': source(
    'Gilmore and Gomory, a linear programming approach to the cutting-stock problem',
    'Operations Research 9 (1961); from memory',
    'paper',
  ),
  money: source('Amounts in minor units', 'each line rounded by itself, the total their sum; derived', 'derivation'),
  'own-times': source('Times that were written down', 'mean and standard deviation of the entries', 'typed'),
} as const;
