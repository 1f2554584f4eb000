import { notifyManager, QueryClient } from '@tanstack/react-query';

// A box that is ticked is shown as ticked before anything else happens, not one turn of the clock later.
notifyManager.setScheduler(queueMicrotask);
/** What the pages have read from the server, and what is on its way there. */
export const queries = new QueryClient({
  defaultOptions: {
    queries: { staleTime: 30_000, networkMode: 'offlineFirst', retry: 1 },
    // The server may stand on this machine: being offline is no reason to wait with a change.
    mutations: { networkMode: 'always' },
  },
});
