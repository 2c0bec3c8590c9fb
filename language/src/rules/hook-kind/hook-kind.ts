import type { Measure } from '../../plan/measure.ts';
import type { Hooks, Rules, SpreadLine } from '../../plan/model.ts';
import { replaceWord } from '../fixes.ts';
import { gearOf, hooksOf, runnerOf } from '../gear.ts';
import { tackledLines } from '../neighbours.ts';
import { type Problem, rule } from '../rule.ts';
import { written } from '../standing.ts';
import { firstWord, type RuleBook, writtenHere } from '../written.ts';

/** Hooks of a kind that the rules do not allow on what they are rigged to. */
export const hookKind = rule({
    name: 'hook-kind',
    group: 'hooks',
    standing: written("The event's rule for natural bait, and the pack that it stands on."),
    severity: 'error',
    summary:
        'A hook is of a kind that the rules do not allow on this lure or bait, or hangs free of the bait.',
    settings: {},

    check(analysis, _, report) {
        const event = analysis.plan.event?.value;
        if (!event) return;
        const singles = firstWord(analysis.plan, ({ lureHooks, baitHooks }) => lureHooks ?? baitHooks);
        for (const { line } of tackledLines(analysis)) {
            const hooks = hooksOf(line);
            const wrong = hooks && (ofBait(line, hooks, event) ?? (singles && ofAny(line, hooks, singles)));
            if (wrong) report({ why: 'A fish on it does not count.', ...wrong, positions: [line] });
        }
    },
});

interface Word {
    readonly book: RuleBook;
    readonly limit: Measure;
}

function ofBait(line: SpreadLine, hooks: Hooks, { baitHook, title }: Rules): Problem | undefined {
    if (!line.bait || !baitHook || baitHook.value === 'any' || hooks.kind?.value === baitHook.value)
        return undefined;
    const wanted = `${baitHook.value} hooks with natural bait`;
    const related = [{ at: baitHook, what: 'The rule is written here.' }];
    const remedy = `Rig ${baitHook.value} hooks.`;
    if (!hooks.kind) {
        const what = `The hooks of ${line.bait.value.title} do not say their kind, and ${title} wants ${wanted}.`;
        return {
            at: hooks,
            severity: 'hint',
            what,
            why: 'Nobody can say whether a fish on them counts.',
            remedy: `Write it down: kind ${baitHook.value}.`,
            related,
        };
    }
    const what = `${line.bait.value.title} has ${hooks.kind.value} hooks, and ${title} wants ${wanted}.`;
    const fixes = [replaceWord(`Rig ${baitHook.value} hooks`, hooks.kind, baitHook.value)];
    return { at: [hooks.kind, hooks], what, remedy, related, fixes };
}

function ofAny(
    line: SpreadLine,
    hooks: Hooks,
    { book: { title: book, ...written }, limit }: Word,
): Problem | undefined {
    const related = [{ at: limit, what: writtenHere({ title: book, ...written }) }];
    const { kind, dangling } = hooks;
    const [gear, title] = [gearOf(line), runnerOf(line)?.value.title];
    if (gear === undefined || gear === 'plug') return undefined;
    if (kind?.value === 'treble' || kind?.value === 'double') {
        const what = `${title} has ${kind.value} hooks, and ${book} allows only singles on a ${gear}.`;
        return { at: [kind, hooks], what, remedy: 'Rig single hooks.', related };
    }
    if (gear !== 'natural bait' || !dangling?.value) return undefined;
    const what = `A hook of ${title} hangs free, and ${book} wants every hook fixed in or to the bait.`;
    return { at: dangling, what, remedy: 'Fix it to the bait.', related };
}
