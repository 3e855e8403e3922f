"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { lazy, Suspense, useEffect, useState } from "react";
import { isAlone } from "@/app/_ui/keys/aloneKeys";
import { keepAsOf } from "@/lib/view/keepAsOf";
import { KNOWN } from "@/lib/view/knownAt";

const load = () => import("@/app/_ui/search/SearchDialog");
/** Fetched when somebody comes near the button, or presses the keys. */
const SearchDialog = lazy(() => load().then((part) => ({ default: part.SearchDialog })));

function opens(event: KeyboardEvent): boolean {
  if (event.key.toLowerCase() === "k") return event.ctrlKey || event.metaKey;
  if (event.key !== "/" || !isAlone(event)) return false;
  // A table's own filter comes first.
  return document.querySelector("[data-table-filter], [role=dialog]") === null;
}

/** Finds anything by what stands on its plate; Ctrl K or ⌘ K opens it, `/` where no table is. */
export function SearchPalette() {
  const [open, setOpen] = useState(false);
  const [query, setQuery] = useState("");
  const router = useRouter();
  const params = useSearchParams();

  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!opens(event)) return;
      event.preventDefault();
      setOpen(true);
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, []);

  const follow = (href: string) => {
    setOpen(false);
    setQuery("");
    router.push(keepAsOf(href, params.get("asOf"), params.get(KNOWN)));
  };

  return (
    <>
      <button
        type="button"
        className="button sm:min-w-72 sm:justify-between"
        aria-haspopup="dialog"
        onPointerEnter={load}
        onFocus={load}
        onClick={() => setOpen(true)}
      >
        Search
        <kbd className="font-normal font-sans text-ink-2 text-sm max-sm:hidden">Ctrl K</kbd>
      </button>
      {open ? (
        <Suspense fallback={null}>
          <SearchDialog query={query} onQuery={setQuery} onChoose={follow} onClose={() => setOpen(false)} />
        </Suspense>
      ) : null}
    </>
  );
}
