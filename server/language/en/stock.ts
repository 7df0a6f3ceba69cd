/** Words about bars, remnants and how pieces lie on them. */
export const stockWords = {
  'stage.stock': 'Stock',
} as const;
