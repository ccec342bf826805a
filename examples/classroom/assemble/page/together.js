// The library comes with its code in columns, which compress better (columns.go). together puts it in order again: the
// very bytes that Go's compiler wrote.
"use strict";

// A Column is bytes that are read one after another.
class Column {
  constructor(bytes) {
    this.bytes = bytes;
    this.at = 0;
  }

  unsigned() {
    let value = 0, shift = 0, byte;
    do {
      byte = this.bytes[this.at++];
      value |= (byte & 127) << shift;
      shift += 7;
    } while (byte > 127);
    return value;
  }

  signed() {
    const before = this.at;
    const value = this.unsigned(), shift = 7 * (this.at - before);
    return shift < 32 && this.bytes[this.at - 1] & 64 ? value | -1 << shift : value;
  }

  part(length) {
    this.at += length;
    return this.bytes.subarray(this.at - length, this.at);
  }
}

function together(packed) {
  const all = new Column(packed);
  const out = new Uint8Array(all.unsigned());
  const before = all.part(all.unsigned()), after = all.part(all.unsigned());
  const meanings = new Column(all.part(all.unsigned())), symbols = all.part(all.unsigned());
  const columns = [];
  while (all.at < packed.length) columns.push(new Column(all.part(all.unsigned())));

  // What each symbol stands for: an operand, the column of it, and the bytes before it from start to end.
  const operand = [], column = [], start = [], end = [], fixed = meanings.bytes;
  while (meanings.at < fixed.length) {
    operand.push(fixed[meanings.at++]);
    column.push(columns[fixed[meanings.at++]]);
    const length = meanings.unsigned();
    start.push(meanings.at);
    end.push(meanings.at += length);
  }

  let to = 0;
  const copy = (from) => {
    const bytes = from.bytes;
    let at = from.at, byte;
    do out[to++] = byte = bytes[at++]; while (byte > 127);
    from.at = at;
  };
  const put = (bytes) => {
    out.set(bytes, to);
    to += bytes.length;
  };
  const unsigned = (value) => {
    for (; value > 127; value >>>= 7) out[to++] = value & 127 | 128;
    out[to++] = value;
  };
  const signed = (value) => {
    for (; value > 63 || value < -64; value >>= 7) out[to++] = value & 127 | 128;
    out[to++] = value & 127;
  };

  put(before);
  for (let at = 0, func = 0x1000; at < symbols.length; func++) {
    const began = to;
    to += 5; // for the length of the function, which is not known yet
    const lists = columns[0].unsigned();
    unsigned(lists);
    for (let n = lists; n > 0; n--) {
      copy(columns[0]);
      put(columns[0].part(1));
    }
    // The blocks that are open, and the numbers of the places where they end (instruction.go).
    let depth = 0, outer = 0, ended = 0, number = [];
    while (depth >= 0) {
      const s = symbols[at++], from = column[s];
      for (let i = start[s], last = end[s]; i < last; i++) out[to++] = fixed[i];
      switch (operand[s]) {
        case 1: // a block begins
          depth++;
          break;
        case 2: // a block ends
          if (--depth < outer) {
            outer = depth;
            ended++;
          }
          break;
        case 3: // a number as it stands
          copy(from);
          break;
        case 4: // four bytes
          put(from.part(4));
          break;
        case 5: // eight bytes
          put(from.part(8));
          break;
        case 6: // a branch
          unsigned(depth - from.signed());
          break;
        case 7: { // a table of branches
          const last = from.signed();
          unsigned(last);
          number = [];
          outer = depth;
          ended = 0;
          for (let i = 0, block = 0; i <= last; i++) {
            unsigned(block += from.signed());
            while (number.length <= Math.min(block, last + 1)) number.push(i);
          }
          break;
        }
        case 8: // where the function goes on after a call
          signed((func << 16) + (number[ended] || 0) + from.signed());
          break;
        case 9: // where it goes on after a jump
          signed((number[ended] || 0) + from.signed());
      }
    }
    const length = to - began - 5;
    to = began;
    unsigned(length);
    out.copyWithin(to, began + 5, began + 5 + length);
    to += length;
  }
  put(after);
  return out;
}
