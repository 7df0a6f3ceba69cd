/** True where a text is more than one cell, so that it is not simply typed into the field. */
export function isTable(text: string): boolean {
  const trimmed = text.trim();
  if (/[\t\n\r;]/.test(trimmed)) return true;
  return (trimmed.match(/,/g) ?? []).length > 1 && !/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(trimmed);
}
