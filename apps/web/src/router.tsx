import { createRootRoute, createRoute, createRouter, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { queries } from './book/queries.ts';
import { bookQuery } from './book/use-book.ts';
import { Frame } from './frame/frame.tsx';
import { OpenBookGate } from './frame/open-book-gate.tsx';
import { Lost } from './pages/lost.tsx';
import { Places } from './pages/places.tsx';
import { plannerDoor } from './planning/planner-door.ts';
import { figureReady } from './repertoire/ready-ahead.ts';

const root = createRootRoute({ component: Frame, notFoundComponent: Lost });
const start = createRoute({
  getParentRoute: () => root,
  path: '/start',
  component: lazyRouteComponent(() => import('./pages/start.tsx'), 'Start'),
});
const placesList = createRoute({ getParentRoute: () => root, path: '/places', component: Places });

const open = createRoute({
  getParentRoute: () => root,
  id: 'open',
  // The book is on its way while the code of the page still is.
  beforeLoad: () => void queries.prefetchQuery(bookQuery),
  component: OpenBookGate,
});
const home = createRoute({
  getParentRoute: () => open,
  path: '/',
  beforeLoad: () => {
    throw redirect({ to: '/diary', replace: true });
  },
});
const diary = createRoute({
  getParentRoute: () => open,
  path: '/diary',
  loader: () => void plannerDoor.start(),
  component: lazyRouteComponent(() => import('./pages/diary.tsx'), 'Diary'),
});
const gigs = createRoute({
  getParentRoute: () => open,
  path: '/gigs',
  component: lazyRouteComponent(() => import('./pages/gigs.tsx'), 'Gigs'),
});
const newGig = createRoute({
  getParentRoute: () => open,
  path: '/gigs/new',
  component: lazyRouteComponent(() => import('./pages/gig-edit.tsx'), 'NewGig'),
});
const gig = createRoute({
  getParentRoute: () => open,
  path: '/gigs/$gig',
  loader: () => void plannerDoor.start(),
  component: lazyRouteComponent(() => import('./pages/gig.tsx'), 'GigPage'),
});
const editGig = createRoute({
  getParentRoute: () => open,
  path: '/gigs/$gig/edit',
  component: lazyRouteComponent(() => import('./pages/gig-edit.tsx'), 'EditGig'),
});
const repertoire = createRoute({
  getParentRoute: () => open,
  path: '/repertoire',
  component: lazyRouteComponent(() => import('./repertoire/repertoire-page.tsx'), 'RepertoirePage'),
});
const figure = createRoute({
  getParentRoute: () => open,
  path: '/repertoire/$figure',
  loader: figureReady,
  component: lazyRouteComponent(() => import('./repertoire/figure-page.tsx'), 'FigurePage'),
});
const figureEditor = createRoute({
  getParentRoute: () => open,
  path: '/repertoire/$figure/edit',
  component: lazyRouteComponent(() => import('./repertoire/figure-editor.tsx'), 'FigureEditor'),
});
const balloons = createRoute({
  getParentRoute: () => open,
  path: '/repertoire/your-balloons',
  validateSearch: ({ size, maker }: Record<string, unknown>): { readonly size?: string; readonly maker?: string } => ({
    ...(size === undefined ? {} : { size: String(size) }),
    ...(typeof maker === 'string' ? { maker } : {}),
  }),
  component: lazyRouteComponent(() => import('./balloons/balloons-page.tsx'), 'BalloonsPage'),
});
const store = createRoute({
  getParentRoute: () => open,
  path: '/store',
  component: lazyRouteComponent(() => import('./pages/store.tsx'), 'Store'),
});
const item = createRoute({
  getParentRoute: () => open,
  path: '/store/$item',
  component: lazyRouteComponent(() => import('./pages/item-edit.tsx'), 'ItemEdit'),
});
const shopping = createRoute({
  getParentRoute: () => open,
  path: '/shopping',
  component: lazyRouteComponent(() => import('./pages/shopping.tsx'), 'Shopping'),
});
const suppliers = createRoute({
  getParentRoute: () => open,
  path: '/shopping/suppliers',
  component: lazyRouteComponent(() => import('./pages/suppliers.tsx'), 'Suppliers'),
});
const supplier = createRoute({
  getParentRoute: () => open,
  path: '/shopping/suppliers/$supplier',
  component: lazyRouteComponent(() => import('./pages/supplier-edit.tsx'), 'SupplierEdit'),
});
const firstKit = createRoute({
  getParentRoute: () => open,
  path: '/first-kit',
  component: lazyRouteComponent(() => import('./kit/first-kit.tsx'), 'FirstKit'),
});
const book = createRoute({
  getParentRoute: () => open,
  path: '/book',
  component: lazyRouteComponent(() => import('./pages/book.tsx'), 'BookPage'),
});

export const router = createRouter({
  routeTree: root.addChildren([
    start,
    placesList,
    open.addChildren([
      home,
      diary,
      gigs,
      newGig,
      gig,
      editGig,
      repertoire,
      figure,
      figureEditor,
      balloons,
      store,
      item,
      shopping,
      suppliers,
      supplier,
      firstKit,
      book,
    ]),
  ]),
  defaultPreload: 'intent',
  scrollRestoration: true,
});
declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
