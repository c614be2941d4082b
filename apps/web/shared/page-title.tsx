import { type ReactNode, useEffect, useRef } from 'react';

let firstScreen = true;

/**
 * The heading of a screen. When the screen changes the heading takes the focus and names the window, so that a
 * screen reader starts there and the next press of Tab goes to the first control.
 */
export const PageTitle = ({
  children,
  title,
  id,
  className,
}: {
  readonly children: ReactNode;
  readonly title: string /** What makes it another screen. */;
  readonly id: string;
  readonly className?: string;
}) => {
  const ref = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the focus moves when the screen changes, not when its words do
  useEffect(() => {
    document.title = `${title} · Seamward`;
    if (firstScreen) firstScreen = false;
    else ref.current?.focus({ preventScroll: true });
  }, [id]);
  return (
    <h1 ref={ref} tabIndex={-1} className={className}>
      {children}
    </h1>
  );
};
