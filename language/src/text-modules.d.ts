/** Files that the bundler and the test runner hand over as text. */
declare module '*.spread' {
    const text: string;
    export default text;
}
declare module '*.md' {
    const text: string;
    export default text;
}
