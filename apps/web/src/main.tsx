import '@fontsource/alegreya-sans/500.css';
import '@fontsource/alegreya-sans/700.css';
import '@fontsource/alegreya-sans/800.css';
import './look/tokens.css';
import './look/look.css';
import './look/app.css';
import { notifyManager, QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { router } from './router.tsx';

const root = document.getElementById('root');
if (root === null) throw new Error('the page has no #root');
// A box that is ticked is shown as ticked before anything else happens, not one turn of the clock later.
notifyManager.setScheduler(queueMicrotask);
const queries = new QueryClient({
  defaultOptions: {
    queries: { staleTime: 30_000, networkMode: 'offlineFirst', retry: 1 },
    // The server may stand on this machine: being offline is no reason to wait with a change.
    mutations: { networkMode: 'always' },
  },
});

createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);
