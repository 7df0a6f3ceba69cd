/** What only the printed sheets say: `sheet.<key>`. */
export const sheets = {
  'sheet.bend': 'Bend sheet',
  'sheet.cut-and-purge': 'Cut and purge sheet',
  'sheet.comparison': 'Ways to put it right',
  'sheet.quote': 'Quote',
} as const;
