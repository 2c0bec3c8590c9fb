/*
 * Why a change may go unnoticed. Each reason says of which changes it is true; the first that fits is given. Those
 * that none fits are listed as they are: no test of their part tells them apart.
 */
const reasons = [
    {
        of: ({ kind, was, became }) =>
            kind === 'EqualityOperator' && was.replace(/([<>])=/, '$1') === became.replace(/([<>])=/, '$1'),
        reason: 'The two differ at the limit itself and nowhere else, and what is compared there is computed or continuous: a plan meets it to the last digit by chance alone.',
    },
    {
        of: ({ was }) => /^(1 [-+] )?(1e-\d+|HAIR|SLACK)$|[*/+-] \(?(1 [-+] )?(1e-\d+|HAIR)\)?$/.test(was),
        reason: 'A hair of slack against rounding: no number that somebody writes lies within it.',
    },
    {
        of: ({ kind }) => kind === 'OptionalChaining',
        reason: 'Where there is nothing to read further in, a condition beside it has ended the matter before, or no sound plan comes here; the mark is there for the compiler.',
    },
    {
        of: ({ was, became, kind }) =>
            /^(Conditional|Logical)/.test(kind) &&
            /=== undefined|!== undefined/.test(was) &&
            /^(true|false)$|&&|\|\|/.test(became),
        reason: 'What is unknown is not a number, and not a number is on neither side of a limit: the comparison that follows says the same.',
    },
    {
        of: ({ kind, was, became }) =>
            kind === 'ConditionalExpression' &&
            /^true|false$/.test(became) &&
            /^!?\w+(\.\w+)*( [<>] 0)?$/.test(was),
        reason: 'What is not there, or not above zero, leads to nothing further down as well: the condition only ends the matter earlier.',
    },
    {
        of: ({ was }) =>
            /place === 'shotgun'|position\.length === 'short'|filter\(\(\{ line \}\) => line\.position\.length/.test(
                was,
            ),
        reason: 'A line is never behind itself, so looking at the others as well finds nothing more.',
    },
    {
        path: /measured-crests/,
        of: ({ was }) => /mean(Index|Astern)|number - 1|USUAL_HABIT/.test(was),
        reason: 'Deviations from a mean add up to nothing, so a shift of the other factor changes no sum; the usual habit’s spacing is theory’s own, 1.',
    },
    {
        path: /crest\.ts|wash\.ts|ride\.ts|train\.ts|trust\.ts|wave-height\.ts/,
        of: ({ was }) => /> 0|offset|Math\.max/.test(was),
        reason: 'What is not above zero gives not a number or no place further down, and the answer is the same: none.',
    },
    {
        path: /wavelength\.ts/,
        of: () => true,
        reason: 'Newton’s steps come down to the same root another way: the tests hold the answer to the dispersion relation, not the steps.',
    },
    {
        path: /sag\.ts/,
        of: () => true,
        reason: 'The two forms agree to more digits than the tests ask for where they meet.',
    },
    {
        of: ({ was, became, kind }) =>
            kind === 'ArrayDeclaration' && was === '[]' && became.includes('Stryker'),
        reason: 'A list of names in which one more that nobody has changes nothing.',
    },
];

/** The reason, as a sentence; `undefined` where there is none. */
export function reasonFor(path, survivor) {
    return reasons.find((each) => (each.path?.test(path) ?? true) && each.of(survivor))?.reason;
}
