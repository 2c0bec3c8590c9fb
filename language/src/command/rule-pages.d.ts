/** Made by the build from the pages beside the rules: rule name → Markdown. */
declare module 'layback:rule-pages' {
    const pages: Readonly<Record<string, string>>;
    export default pages;
}
