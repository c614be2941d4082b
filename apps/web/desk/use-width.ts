import { type RefObject, useEffect, useRef, useState } from 'react';

/** How wide an element is on the screen, in steps, so that a drawing is not made anew for every pixel. */
export const useWidth = <E extends HTMLElement>(first: number, step = 40): readonly [RefObject<E | null>, number] => {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(first);
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    // What is not laid out yet, or hidden for a moment, has no width: the drawing of before stays.
    const measure = () => {
      if (element.clientWidth >= step) setWidth(Math.round(element.clientWidth / step) * step);
    };
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [step]);
  return [ref, width];
};
