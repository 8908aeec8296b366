/** What the bundler makes of imports that are no code. */
declare module '*?url' {
  const url: string;
  // biome-ignore lint/style/noDefaultExport: the bundler gives a file's address as the default export
  export default url;
}
declare module '*.css';
