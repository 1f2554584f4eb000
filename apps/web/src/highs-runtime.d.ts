/** The address of the solver's WebAssembly, as Vite gives it. */
declare module 'highs/runtime?url' {
  const address: string;
  export default address;
}
