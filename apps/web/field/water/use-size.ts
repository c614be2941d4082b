import { useEffect, useRef, useState } from 'react';
import type { Size } from './wall-view';

const FIRST: Size = { w: 358, h: 190 };

/** How large an element is on the screen. */
export const useSize = () => {
  const ref = useRef<HTMLDivElement>(null);
  const [size, set] = useState<Size>(FIRST);
  useEffect(() => {
    const box = ref.current;
    if (!box) return;
    const watch = new ResizeObserver(() => {
      if (box.clientWidth > 0 && box.clientHeight > 0) set({ w: box.clientWidth, h: box.clientHeight });
    });
    watch.observe(box);
    return () => watch.disconnect();
  }, []);
  return [ref, size] as const;
};
