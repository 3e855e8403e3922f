/** Reads numbers from bytes one after another, the high byte first. */
export class ByteReader {
  #at = 0;
  readonly #bytes: Buffer;

  constructor(bytes: Uint8Array) {
    this.#bytes = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  /** Place of the next byte. */
  get at(): number {
    return this.#at;
  }

  /** A reader of its own, beginning so many bytes from the start. */
  from(place: number): ByteReader {
    return new ByteReader(this.#bytes.subarray(place));
  }

  skip(count: number): void {
    this.#at += count;
  }

  bytes(count: number): Buffer {
    const found = this.#bytes.subarray(this.#at, this.#at + count);
    this.#at += count;
    return found;
  }

  u8(): number {
    const found = this.#bytes.readUInt8(this.#at);
    this.#at += 1;
    return found;
  }

  i8(): number {
    const found = this.#bytes.readInt8(this.#at);
    this.#at += 1;
    return found;
  }

  u16(): number {
    const found = this.#bytes.readUInt16BE(this.#at);
    this.#at += 2;
    return found;
  }

  i16(): number {
    const found = this.#bytes.readInt16BE(this.#at);
    this.#at += 2;
    return found;
  }

  u32(): number {
    const found = this.#bytes.readUInt32BE(this.#at);
    this.#at += 4;
    return found;
  }

  tag(): string {
    return this.bytes(4).toString("latin1");
  }

  /** A number of up to five bytes, seven bits each, the last without its high bit. */
  base128(): number {
    let value = 0;
    for (let count = 0; count < 5; count += 1) {
      const byte = this.u8();
      value = value * 128 + (byte & 0x7f);
      if (byte < 0x80) return value;
    }
    throw new RangeError("a length must end within five bytes");
  }

  /** A number of one to three bytes, as WOFF2 writes small counts. */
  small(): number {
    const code = this.u8();
    if (code === 253) return this.u16();
    if (code === 254) return 506 + this.u8();
    return code === 255 ? 253 + this.u8() : code;
  }
}
