/*
 * Why a change may go unnoticed. Each reason says of which changes it is true; the first that fits is given. Those
 * that none fits are listed as they are: no test of their part tells them apart.
 */
const spared = 'It only spares work: what it lets through is worked out, and found to be no nearer.';
const steps =
    'Other steps towards the same place, or more or fewer of them: tests hold the answer to closed forms and to other programs’ figures, not the way to it.';

/** What is said of one file, or of a few. */
const particular = [
    {
        path: /order\/crossing/,
        of: ({ was }) =>
            /boxGap|within, least|axis < 3|let gap|\[a, b, c\]|\[(first|second)\[0\]\[axis\]|Math\.(min|max)\((Math|gap)/.test(
                was,
            ),
        reason: spared,
    },
    {
        path: /order\/crossing|triangles/,
        of: ({ was }) => /^\[(line\[0\]!, line\[0\]!|first\[0\], second\[0\]|0, 0, 0, 0)\]$|^\[\]$/.test(was),
        reason: 'A beginning that the first triangle or pair of edges takes the place of; only what is no number leaves it, at an infinite distance.',
    },
    {
        path: /order\/clearing/,
        of: ({ was }) => /port\.aside|!port \|\| !starboard/.test(was),
        reason: 'Set lines run astern each in a plane of its own, so a running line meets one on one side or on the other.',
    },
    {
        path: /order\/clearing/,
        of: ({ kind }) => kind === 'UnaryOperator',
        reason: 'What is urgent has to be more so than any distance aside, in metres; how much more is all one in the orders that tests look at.',
    },
    {
        path: /physics\/root/,
        of: ({ was, kind }) => kind === 'ArithmeticOperator' && /residual [*] \w+\.residual/.test(was),
        reason: 'Only the sign of the product counts, and a quotient has the same.',
    },
    {
        path: /physics\/root/,
        of: ({ was }) => /isFinite|x === least|share > 0/.test(was),
        reason: 'What is no number changes no sign, and at its end a walk stays where it is: it gives up later, with the same answer.',
    },
    {
        path: /segments/,
        of: ({ was, became }) => /candidate === 4/.test(was) && /!==/.test(became),
        reason: 'The four ends are tried in another order.',
    },
    { path: /segments/, of: ({ was }) => /WELL_APART/.test(was), reason: spared },
    {
        path: /triangles/,
        of: ({ was }) => /area|NO_AREA|SLIVER|dot\(ab, ab\)/.test(was),
        reason: 'Without area, or nearly, a triangle has no plane that rounding would leave anything of: its edges are nearer or as near, and say it all.',
    },
    {
        path: /triangles/,
        of: ({ was }) => /^distance (>|<) /.test(was),
        reason: 'Touching is found by the edges already, and what is no number has no place to tell.',
    },
    {
        path: /sway\.ts/,
        of: ({ was }) => /upTo, Math\.PI|Math\.PI \/ 2/.test(was),
        reason: 'Beyond square to its bearing a line does not turn, so looking beyond finds nothing more.',
    },
    {
        path: /clip\.ts/,
        of: ({ was }) => /isSound\(\.\.\.tip/.test(was),
        reason: 'Of places that are no numbers no product of lengths is above zero, which the line below looks for.',
    },
    {
        path: /measured-crests/,
        of: ({ was }) => /mean(Index|Astern)|number - 1|USUAL_HABIT/.test(was),
        reason: 'Deviations from a mean add up to nothing, so a shift of the other factor changes no sum; the usual habit’s spacing is theory’s own, 1.',
    },
    {
        path: /waves\/(crest|wash|ride|train|trust|wave-height)\.ts/,
        of: ({ was }) => /> 0|offset|Math\.max/.test(was),
        reason: 'What is not above zero gives not a number or no place further down, and the answer is the same: none.',
    },
    { path: /wavelength\.ts/, of: () => true, reason: steps },
    {
        path: /sag\.ts/,
        of: () => true,
        reason: 'The two forms agree to more digits than the tests ask for where they meet.',
    },
    {
        path: /rules\/neighbours/,
        of: ({ was }) => /astern\.known/.test(was),
        reason: 'What is unknown is not a number, and not a number is neither nearer nor further than another.',
    },
    {
        path: /rules\/page/,
        of: ({ kind }) => kind === 'Regex',
        reason: 'Every page has its settings in one piece and something behind them, so a looser or a tighter way to find the piece finds it as well.',
    },
    {
        path: /rules\/fixes/,
        of: ({ was, kind }) => kind === 'Regex' || /old !== 0|unit\.offset/.test(was),
        reason: 'A measure is written as one number and its unit; what is divided by nothing is no number, and no rule writes temperatures.',
    },
    {
        path: /rules\/used-twice/,
        of: ({ was }) => was === '() => 1',
        reason: 'Compared with no figure nothing is fewer: the first has been passed before, and every other is told.',
    },
    {
        path: /rules\/people/,
        of: ({ was, became }) => /toLowerCase/.test(was) && /toUpperCase/.test(became),
        reason: 'Names are only compared: large letters tell as much apart as small ones.',
    },
    {
        path: /wave-face|wash|stagger|teaser-foul/,
        of: ({ was }) => /back\?\.kind/.test(was),
        reason: 'A place that is written as a wave has no distance of its own, and no lure off its face is written so: the mark is there for the compiler.',
    },
    {
        path: /clip-on-double/,
        of: ({ was }) => was === 'settled',
        reason: 'So near the boat a line hangs within centimetres of straight.',
    },
    {
        path: /turn-stall/,
        of: ({ was }) => /slackAt \?\? Infinity|when (===|<) before/.test(was),
        reason: 'Who falls slack sooner has slowed more by then, so either tells the worse side.',
    },
    {
        path: /waves-hidden/,
        of: ({ was }) => /!sea|!boat/.test(was),
        reason: 'Waves are told as hidden by a sea and for a boat alone: the condition is there for the compiler.',
    },
    {
        path: /physics\/(climb|line|line-load|chain\/\w+|turn\/(tractrix|trail|manoeuvre|course|meeting|envelope|tightest|sensitivity|passing|swept))\.ts/,
        of: ({ was }) =>
            /halving|tolerance|growth|planned|length \* |error|LOCAL_ERROR|MOST_|pieces|GRAZE|SHORTEST|looks|step\b|steps|index >= pieces|1e-\d+|iteration/i.test(
                was,
            ),
        reason: steps,
    },
];

/** What is true wherever it stands. */
const general = [
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
        of: ({ kind, was }) =>
            kind === 'StringLiteral' && /^'(alone|surge|creep|foul|speeds?|slack|slow)'$/.test(was),
        reason: 'A word by which problems are put together: it only has to differ from the others, and of nothing and them it does.',
    },
    {
        of: ({ kind, was, became }) =>
            kind === 'StringLiteral' && /^'(\\n| |, )?'$/.test(was) && /^""$|Stryker/.test(became),
        reason: 'What keeps the parts of a key apart, or stands where there is none: no two keys become one by it.',
    },
    {
        of: ({ kind }) => kind === 'OptionalChaining',
        reason: 'Where there is nothing to read further in, a condition beside it has ended the matter before, or no plan that tests know comes here; the mark is there for the compiler.',
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
            /^(true|false)$/.test(became) &&
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
        of: ({ was, became, kind }) =>
            kind === 'ArrayDeclaration' && was === '[]' && became.includes('Stryker'),
        reason: 'A list that is empty or holds a word that nobody has: without place, number or name the word is passed over.',
    },
];

/** The reason, as a sentence; `undefined` where there is none. */
export function reasonFor(path, survivor) {
    return [...particular, ...general].find((each) => (each.path?.test(path) ?? true) && each.of(survivor))
        ?.reason;
}
