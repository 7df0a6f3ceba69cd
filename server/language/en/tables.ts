/** Words of tables that grow: their rows, and what is pasted into them from a spreadsheet. */
export const tables = {
  'row.open': 'Row {number}: move, add or take out',
  'row.above': 'Add above',
  'row.below': 'Add below',
  'row.reverse': 'Start from the other end',
  'row.full': 'This table has room for {most} rows and is full.',

  'paste.how':
    'Rows copied from a spreadsheet can be pasted into any cell: x, y, z and radius in this order, or in any order under a first row that names them.',
  'paste.open': 'Paste a table',
  'paste.label': 'What was pasted',
  'paste.empty': 'Paste rows here',
  'paste.over': 'Lay it over from row {row}, {column}',
  'paste.whole': 'Make it the whole table',
  'paste.wholeOf': 'Make the pasted rows the whole table',
  'paste.away': 'Throw it away',
  'paste.done': '{count} rows pasted. Undo takes them back.',
  'paste.left': 'Below them {left} rows stand as before.',
  'paste.unused': 'Not used: {columns}.',
  'paste.absent': 'No column for {columns}: 0 stands there.',
  'paste.kept': 'Nothing was pasted. Mend the text below and try again.',
  'paste.cell': 'Row {row}, column {column}: “{text}”. {why}',
  'paste.cellEmpty': 'Row {row}, column {column} is empty.',
  'paste.tooMany':
    'There are {count} rows. The table takes {most}, and row {first} is the first too many. Take rows out of the text below, or part the run into members that take {most} each.',
  'paste.tooManyBelow':
    'There are {count} rows. The table takes {most}; from its row {from} on there is room for {room}, and pasted row {first} is the first too many. Paste further up, make them the whole table, or take rows out of the text below.',
  'paste.tooFew': 'There are {count} rows; the table needs {least} at least. Lay it over instead, or add rows below.',
  'paste.tooWide':
    'Row {row} has {count} columns; there is room for {room}. Put a first row above that names the columns: x, y, z, radius.',
  'paste.headingTwice': 'Two columns are headed “{heading}”. Take one of them out.',
  'paste.nothing': 'There is no row with numbers in it.',
  'paste.notRead': 'The part of the page that reads tables did not come. The text is kept below; try again.',
} as const;
