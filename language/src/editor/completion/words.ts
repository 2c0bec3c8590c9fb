import { CompletionItemKind } from 'vscode-languageserver';
import { contextIn } from '../../plan/checks/context.ts';
import { baseOf, Gathered, gather } from '../../plan/resolve/gather.ts';
import { propertyOf, vocabulary } from '../../plan/vocabulary.ts';
import { ruleNamed, rules } from '../../rules/registry.ts';
import { boundsText, fallbackText } from '../../rules/settings.ts';
import type { EditorServices } from '../services.ts';
import { choice, place } from '../snippets.ts';
import { definitionAround } from '../spot.ts';
import type { Caret } from './caret.ts';
import type { Following } from './following.ts';
import type { Offer } from './item.ts';
import { namedPoints } from './reachable.ts';

/** Words for a place where the grammar takes any: choices, rules, settings, tow points, what `no` takes away. */
export function wordOffers({ rule, role }: Following, caret: Caret, services: EditorServices): Offer[] {
    const [word = ''] = /^\S+/.exec(caret.entry) ?? [];
    switch (`${rule}.${role}`) {
        case 'Waive.rule':
        case 'RuleSetting.rule':
            return ruleOffers();
        case 'Setting.key':
            return settingOffers(caret);
        case 'Setting.choice':
            return word === 'severity' ? plain(severities, CompletionItemKind.EnumMember) : [];
        case 'From.point':
            return plain(namedPoints(caret.document, services), CompletionItemKind.Reference);
        case 'Removal.property':
            return removable(caret);
        default:
            return role === 'choice' ? choicesOf(caret, word) : [];
    }
}

function choicesOf({ blocks }: Caret, word: string): Offer[] {
    const context = blocks.at(-1)?.context;
    const property = context && propertyOf(context, word);
    return plain(property?.choices ?? [], CompletionItemKind.EnumMember);
}

function ruleOffers(): Offer[] {
    return rules.map(({ name, summary, group }, rank) => ({
        label: name,
        kind: CompletionItemKind.Constant,
        detail: group,
        documentation: summary,
        rank,
    }));
}

const severities = ['error', 'warning', 'hint', 'off'];

/** `severity` and the rule's own settings, those that are not said yet. */
export function settingOffers({ blocks }: Caret): Offer[] {
    const node = blocks.at(-1)?.node as { rule?: string; settings?: readonly { key?: string }[] } | undefined;
    const rule = ruleNamed(node?.rule ?? '');
    const said = new Set(node?.settings?.map(({ key }) => key));
    const severity: Offer = {
        label: 'severity',
        kind: CompletionItemKind.Property,
        text: 'severity ',
        snippet: `severity ${choice(1, severities)}`,
        detail: `How grave a finding is (${rule?.severity ?? 'the rule’s own'})`,
        rank: 0,
    };
    const own = Object.entries(rule?.settings ?? {}).map(([name, setting], at): Offer => {
        const usual = fallbackText(setting);
        return {
            label: name,
            kind: CompletionItemKind.Property,
            text: `${name} `,
            snippet: `${name} ${place(1, usual)}`,
            detail: usual,
            documentation: `${setting.doc} ${boundsText(setting)}.`,
            rank: at + 1,
        };
    });
    return [severity, ...own].filter(({ label }) => !said.has(label));
}

/** What a preset says; in the block of a part, any word of it. */
function removable({ blocks }: Caret): Offer[] {
    const block = blocks.at(-1);
    const context = block && contextIn(block.node);
    if (!block || !context) return [];
    const definition = definitionAround(block.node);
    const isWhole = definition !== undefined && definition === block.node;
    const base = isWhole ? baseOf(definition) : undefined;
    // A part of something may stand on what it names; a definition that is like nothing has nothing to take away.
    if (isWhole && !base) return [];
    const words = vocabulary[context].map(({ word }) => word);
    if (!base) return plain(words, CompletionItemKind.Property);
    const said = [...gather(base, new Gathered()).keys()].map((key) => key.split(' ', 1)[0]!);
    return plain(
        words.filter((word) => said.includes(word)),
        CompletionItemKind.Property,
    );
}

export function plain(words: readonly string[], kind: CompletionItemKind): Offer[] {
    return words.map((label, rank) => ({ label, kind, rank }));
}
