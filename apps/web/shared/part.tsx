import { type ComponentType, use } from 'react';

/**
 * A part of the program that is loaded when it is first wanted. Unlike React's own `lazy` it stands at once when it was
 * loaded before it is drawn: no waiting line flashes up, and none is held for the third of a second that React would hold it.
 */
export type Part<P> = ComponentType<P> & { readonly load: () => Promise<unknown> };

export const part = <P extends object>(load: () => Promise<{ readonly default: ComponentType<P> }>): Part<P> => {
  let loaded: ComponentType<P> | undefined;
  let loading: Promise<ComponentType<P>> | undefined;
  const get = (): Promise<ComponentType<P>> => {
    loading ??= load().then((module) => {
      loaded = module.default;
      return module.default;
    });
    loading.catch(() => {
      loading = undefined;
    });
    return loading;
  };
  // biome-ignore lint/correctness/noComponentHookFactories: called once for each part, at module level
  const Drawn = (props: P) => {
    const Component = loaded ?? use(get());
    return <Component {...props} />;
  };
  return Object.assign(Drawn, { load: get });
};

/** Loads parts one after the other when the page has nothing better to do, so that going there later takes no wait. */
export const whenIdle = (...parts: readonly { readonly load: () => Promise<unknown> }[]): void => {
  const idle = (run: () => void): unknown => ('requestIdleCallback' in window ? requestIdleCallback(run) : setTimeout(run, IDLE_MS));
  const [next, ...more] = parts;
  if (next)
    idle(
      () =>
        void next.load().then(
          () => whenIdle(...more),
          () => undefined,
        ),
    );
};

const IDLE_MS = 300;
