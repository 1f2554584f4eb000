import { type ReactElement, useLayoutEffect, useRef, useState } from 'react';

/** A figure that is told how wide it is, so that pictures keep the size of their text. */
export function Measured({
  className,
  children,
}: {
  readonly className?: string;
  readonly children: (width: number) => ReactElement;
}): ReactElement {
  const box = useRef<HTMLElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return undefined;
    const measure = (): void => setWidth(Math.floor(element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return (
    <figure ref={box} className={className}>
      {width > 0 && children(width)}
    </figure>
  );
}
