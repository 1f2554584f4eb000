import { useEffect } from 'react';

/** Says to assistive technology that the page is at work. */
export function useBusy(isBusy: boolean): void {
  useEffect(() => {
    document.body.setAttribute('aria-busy', String(isBusy));
    return () => document.body.removeAttribute('aria-busy');
  }, [isBusy]);
}
