declare module 'jstat' {
    const jstat: {
        readonly beta: { inv(share: number, alpha: number, beta: number): number };
        readonly chisquare: { inv(share: number, degrees: number): number };
        readonly binomial: { pdf(hits: number, tries: number, share: number): number };
    };
    export default jstat;
}
