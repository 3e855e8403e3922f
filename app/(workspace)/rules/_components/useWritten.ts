import { useRouter } from "next/navigation";
import { useState } from "react";

/** What was written down, said once, with the page read again. */
export interface Written {
  readonly code: string;
  readonly version: number;
}

/** Says which version was written and reads the page again. */
export function useWritten() {
  const router = useRouter();
  const [message, setMessage] = useState<string | null>(null);
  const written = ({ code, version }: Written) => {
    setMessage(`${code}, version ${version}, is in force now.`);
    router.refresh();
  };
  return { message, written, close: () => setMessage(null) };
}
