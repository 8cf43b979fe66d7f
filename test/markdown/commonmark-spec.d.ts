declare module 'commonmark-spec' {
  /** The examples of the specification, in order. */
  const specification: { readonly tests: readonly { markdown: string; html: string; section: string; number: number }[] };
  export default specification;
}
