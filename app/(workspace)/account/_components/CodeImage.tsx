import { encode } from "uqr";

/** The key of a code generator as a picture to scan, and as text to type where no camera is at hand. */
export function CodeImage({ address }: { readonly address: string }) {
  const { size, data } = encode(address, { border: 2 });
  const path = data.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : ""))).join("");
  const key = new URL(address).searchParams.get("secret") ?? "";
  return (
    <figure className="my-3 grid justify-items-start gap-2">
      <svg viewBox={`0 0 ${size} ${size}`} width="184" height="184" role="img" aria-label="Key to scan">
        <rect width={size} height={size} fill="#fff" />
        <path d={path} fill="#000" />
      </svg>
      <figcaption>
        Key: <code className="break-all">{key}</code>
      </figcaption>
    </figure>
  );
}
