import { STAGES, type StageKey } from './stages.ts';

/** Where on the screen one reads, as a share of its height: a little above the middle, or so far below the drawing. */
const LINE = { alone: 0.45, below: 0.11 };

/** The drawing where it lies over the card, as it does on a phone; its height as a share of the screen. */
function drawingOver(drawing: HTMLElement | null): number {
  const isOver = drawing !== null && drawing.offsetWidth > 0.9 * window.innerWidth;
  return isOver ? drawing.offsetHeight / window.innerHeight : 0;
}

/** Which stage is being read: the one that crosses a line a little above the middle of what is seen of the card. */
export class ReadingPlace {
  stage: StageKey = $state('what');

  /** Looks until the answer is called; the stages and the drawing must be on the page. */
  watch(): () => void {
    const drawing = document.getElementById('drawing');
    let stop = this.#watchLine(drawing);
    // made larger, the drawing covers what was read before
    const size = new ResizeObserver(() => {
      stop();
      stop = this.#watchLine(drawing);
    });
    if (drawing !== null) size.observe(drawing);
    return () => {
      size.disconnect();
      stop();
    };
  }

  #watchLine(drawing: HTMLElement | null): () => void {
    const over = drawingOver(drawing);
    const line = 100 * (over === 0 ? LINE.alone : Math.min(over + LINE.below, 0.9));
    const observer = new IntersectionObserver(
      (entries) => {
        for (const { isIntersecting, target } of entries) {
          const stage = STAGES.find((key) => target.id === `stage-${key}`);
          if (isIntersecting && stage !== undefined) this.stage = stage;
        }
      },
      { rootMargin: `${String(-line)}% 0px ${String(line - 99)}% 0px` },
    );
    for (const stage of STAGES) {
      const section = document.getElementById(`stage-${stage}`);
      if (section !== null) observer.observe(section);
    }
    return () => {
      observer.disconnect();
    };
  }
}
