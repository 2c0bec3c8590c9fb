import type {
    AtMost,
    Classes,
    Definition,
    Limits,
    LinesTime,
    Referred,
    RuleSetting as RuleSettingNode,
    Setting,
} from '../../../grammar/generated/ast.ts';
import type { Severity } from '../finding.ts';
import type { Defined, RuleSetting, Rules, TackleLimits, WrittenRules } from '../model.ts';
import { startingWith } from './boat.ts';
import { definedBy } from './defined.ts';
import { type Gathered, gather } from './gather.ts';
import type { Slot, Table } from './table.ts';
import { measures } from './tackle.ts';
import {
    choice,
    measure,
    measureOf,
    one,
    originOf,
    read,
    readQuantity,
    said,
    text,
    texts,
} from './values.ts';

export function readRules(definition: Definition, gathered: Gathered): Rules {
    const table = gather(definition, gathered);
    const classes = one(table, 'class among');
    const baitHook = choice(table, 'hooks');
    const teasers = choice(table, 'teasers');
    const stretchMargin = measure(table, 'stretch', 'length');
    const callIn = text(table, 'call');
    const linesIn = timeOf(one(table, 'lines in'));
    const linesOut = timeOf(one(table, 'lines out'));
    const mostLines = most(one(table, 'at most lines'));
    const mostLinesPerAngler = most(one(table, 'at most lines per angler'));
    return {
        ...definedBy(definition),
        written: writtenPacks(table, gathered, [definition]),
        own: readWritten(table),
        ...(mostLines && { mostLines }),
        ...(mostLinesPerAngler && { mostLinesPerAngler }),
        ...(classes && {
            classes: {
                among: (classes.node as Classes).amounts.flatMap(
                    (each) => measureOf(each, 'mass', classes) ?? [],
                ),
                origin: originOf(classes),
            },
        }),
        ...(baitHook && { baitHook }),
        ...(teasers && { teasersHookless: { ...teasers, value: teasers.value === 'hookless' } }),
        settings: readSettings(table),
        ...(stretchMargin && { stretchMargin }),
        ...(linesIn && { linesIn }),
        ...(linesOut && { linesOut }),
        ...(callIn && { callIn }),
        notes: texts(table, 'note'),
    };
}

/** The packs that one stands on, nearest first, each once. */
function writtenPacks(table: Table, gathered: Gathered, seen: Definition[]): (Defined & WrittenRules)[] {
    return (table.get('written') ?? []).flatMap((slot) => {
        const definition = (slot.node as Referred).of?.ref;
        if (!definition || seen.includes(definition)) return [];
        seen.push(definition);
        const below = gather(definition, gathered);
        return [{ ...definedBy(definition), ...readWritten(below) }, ...writtenPacks(below, gathered, seen)];
    });
}

function readWritten(table: Table): WrittenRules {
    const within = (key: string): Table => one(table, key)?.table ?? new Map();
    const rod = measures(within('rod'), ['tip', 'butt'], 'length');
    const gaff = measures(within('gaff'), ['length', 'rope'], 'length');
    const topLength = measure(within('main'), 'length', 'length');
    const edition = text(table, 'edition');
    const wire = choice(table, 'wire');
    const hooks = (key: string) => ({
        count: measure(within(key), 'count', 'count'),
        spacing: measure(within(key), 'spacing', 'length'),
    });
    const [skirted, natural, plug] = [hooks('skirted'), hooks('natural'), hooks('plug')];
    return {
        ...(edition && { edition }),
        limits: [...startingWith(table, 'limits ')].map(readLimits),
        classes: [...startingWith(table, 'class ')].flatMap(readWrittenClass),
        ...(rod.tip && { rodTip: rod.tip }),
        ...(rod.butt && { rodButt: rod.butt }),
        ...(gaff.length && { gaff: gaff.length }),
        ...(gaff.rope && { gaffRope: gaff.rope }),
        ...(skirted.count && { lureHooks: skirted.count }),
        ...(skirted.spacing && { lureHookSpacing: skirted.spacing }),
        ...(natural.count && { baitHooks: natural.count }),
        ...(natural.spacing && { baitHookSpacing: natural.spacing }),
        ...(plug.count && { plugHooks: plug.count }),
        ...(topLength && { topLength }),
        ...(wire && { wireLine: { ...wire, value: wire.value !== 'forbidden' } }),
    };
}

function readLimits(slot: Slot): TackleLimits {
    const upTo = measureOf((slot.node as Limits).upTo, 'mass', slot);
    const lengths = measures(slot.table ?? new Map(), ['double', 'leader', 'combined'], 'length');
    return { ...(upTo && { upTo }), ...lengths, origin: originOf(slot) };
}

function readWrittenClass(slot: Slot): WrittenRules['classes'][number][] {
    const node = slot.node as Classes;
    if (node.among) return [];
    const lineClass = measureOf(node.lineClass, 'mass', slot);
    const tests = measureOf(node.tests, 'force', slot);
    const customary = measureOf(node.customary, 'mass', slot);
    if (!lineClass) return [];
    return [{ lineClass, ...(tests && { tests }), ...(customary && { customary }) }];
}

/** Settings of rules, in a rule pack or in a plan itself. */
export function readSettings(table: Table): RuleSetting[] {
    return [...startingWith(table, 'rule ')].flatMap((slot) => {
        const node = slot.node as RuleSettingNode;
        const rule = said(slot, node.rule, 'rule');
        if (!rule) return [];
        const settings = new Map<
            string,
            RuleSetting['settings'] extends ReadonlyMap<string, infer S> ? S : never
        >();
        let severity: RuleSetting['severity'];
        for (const setting of node.settings) {
            const value = readSetting(setting, slot);
            // Said twice in a block, the first one counts, here as anywhere.
            if (!value) continue;
            if (setting.key === 'severity')
                severity ??= value as RuleSetting['severity'] & { value: Severity };
            else if (!settings.has(setting.key)) settings.set(setting.key, value);
        }
        return [{ rule, ...(severity && { severity }), settings, origin: originOf(slot) }];
    });
}

function readSetting(node: Setting, slot: Slot) {
    const at: Slot = { ...slot, node };
    if (!node.amount) return said<unknown>(at, node.choice ?? node.text, node.choice ? 'choice' : 'text');
    const found = readQuantity(node.amount);
    if (!found) return undefined;
    const dimension = found.unit.dimension;
    const si = read(found, dimension === 'load' ? 'force' : dimension);
    const measure = measureOf(node.amount, dimension === 'load' ? 'force' : dimension, at);
    if (si === undefined || !measure) return undefined;
    return { value: found as unknown, si, measure, origin: measure.origin };
}

function most(slot: Slot | undefined) {
    return slot && measureOf((slot.node as AtMost).amount, 'count', slot);
}

function timeOf(slot: Slot | undefined) {
    return slot && said(slot, (slot.node as LinesTime).time, 'time');
}
