/** The places of the app that exist, in the order of the running head. */
export const places = [
  { to: '/diary', name: 'Diary' },
  { to: '/gigs', name: 'Gigs' },
  { to: '/repertoire', name: 'Repertoire' },
  { to: '/store', name: 'Store' },
  { to: '/shopping', name: 'Shopping' },
  { to: '/book', name: 'Book' },
  { to: '/first-kit', name: 'First kit' },
] as const;
