/** Findings about bars, rates and quotes. */
export const QUOTE_CODES = [
  // stock
  'piece-too-long',
  'bar-joint-no-member',
  'bar-joint-misplaced',
  'bar-joint-bent-over',
  'layout-stale',
  'layout-currency',
  'layout-price-open',
  'layout-remnant-free',
  'layout-heats',
  'layout-not-taken',
  'layout-one-way',
  // quote
  'rate-open',
  'time-open',
  'tube-rate-missing',
  'amount-out-of-range',
  'rates-are-examples',
  'days-at-bender-open',
  'rounding-large',
  'rates-not-in-effect',
  'minor-digits-unlike',
  'quantity-repeated',
  'own-times-differ',
] as const;
