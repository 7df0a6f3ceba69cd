/** The longest name that a piece bears of its job (server/job/stock.ts), and how much of an id tells two jobs apart. */
const LONGEST = 120;
const ID_PART = 8;

/**
 * What jobs that are cut together are called on each other's bars: by their titles; one without a title, or with the title
 * of another, by its id as well. No two are alike, and none is empty.
 *
 * @param jobs in the order in which they are cut, each with its stored id; an empty id: it is not stored
 */
export function jobNames(jobs: readonly { readonly id: string; readonly title: string }[]): string[] {
  const titles = jobs.map(({ title }) => title.trim());
  const taken = new Set<string>();
  return jobs.map(({ id }, index) => {
    const title = titles[index] ?? '';
    const isAlone = title !== '' && titles.filter((other) => other === title).length === 1;
    const parts = isAlone ? [title, numbered(title, id.slice(0, ID_PART))] : [numbered(title, id.slice(0, ID_PART))];
    const offered = [...parts, numbered(title, id)];
    let name = offered.find((one) => !taken.has(one)) ?? numbered(title, id);
    for (let number = 2; taken.has(name); number += 1) name = numbered(title, `${id} ${String(number)}`.trim());
    taken.add(name);
    return name;
  });
}

/** A title with what tells it from others in brackets; that alone where there is no title. */
function numbered(title: string, mark: string): string {
  if (mark === '') return title === '' ? '1' : title;
  if (title === '') return mark.slice(0, LONGEST);
  const end = ` (${mark})`;
  return `${title.slice(0, Math.max(0, LONGEST - end.length))}${end}`.slice(0, LONGEST);
}
