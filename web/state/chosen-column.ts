/**
 * A table of options is wider than a phone: the chosen one is brought beside the heads of the rows.
 *
 * @param chosen place of its column among the options; −1 where none is chosen
 */
export const showColumn =
  (chosen: number) =>
  (box: HTMLElement): void => {
    const heads = box.querySelectorAll<HTMLElement>('thead > tr > *');
    const [first, column] = [heads[0], heads[chosen + 1]];
    if (first === undefined || column === undefined || chosen < 0) return;
    const hiddenRight = column.offsetLeft + column.offsetWidth > box.scrollLeft + box.clientWidth;
    const hiddenLeft = column.offsetLeft < box.scrollLeft + first.offsetWidth;
    if (hiddenRight || hiddenLeft) box.scrollLeft = column.offsetLeft + column.offsetWidth - box.clientWidth;
  };
