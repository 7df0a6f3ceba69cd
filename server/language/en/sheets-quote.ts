/** Words of the sheets about bars and money. */
export const quoteSheets = {
  'sheet.cut-list': 'Cut list',
} as const;
