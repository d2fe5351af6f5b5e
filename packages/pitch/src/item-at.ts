/**
 * The item of a list at a place where it is known to be, counted from the end where the place is negative.
 * A stand-in such as 0 would turn a slip of ours into a wrong figure; this says that it is one.
 *
 * @throws RangeError where the list has no such item, which is a fault of ours
 * @internal
 */
export function itemAt<Item>(list: ArrayLike<Item>, place: number): Item {
  const item = list[place < 0 ? list.length + place : place];
  if (item === undefined) throw new RangeError(`a list of ${list.length} has no item ${place}`);
  return item;
}
