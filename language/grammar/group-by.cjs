// The parser library behind `langium generate` calls Object.groupBy, which Node 20 does not have yet.
Object.groupBy ??= (items, keyOf) => {
    const groups = Object.create(null);
    let index = 0;
    for (const item of items) {
        const key = keyOf(item, index++);
        groups[key] ??= [];
        groups[key].push(item);
    }
    return groups;
};
