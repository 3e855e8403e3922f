"use client";

import { useRouter, useSearchParams } from "next/navigation";
import { useEffect, useState } from "react";
import {
  Autocomplete,
  Button,
  Dialog,
  DialogTrigger,
  Input,
  Modal,
  ModalOverlay,
  SearchField,
} from "react-aria-components";
import { SearchResults } from "@/app/_ui/search/SearchResults";
import { useSearch } from "@/app/_ui/search/useSearch";
import { keepAsOf } from "@/lib/view/keepAsOf";
import { KNOWN } from "@/lib/view/knownAt";

function opens(event: KeyboardEvent): boolean {
  if (event.key.toLowerCase() === "k") return event.ctrlKey || event.metaKey;
  if (
    event.key !== "/" ||
    (event.target as HTMLElement).closest("input, textarea, select, [contenteditable]")
  )
    return false;
  // A table's own filter comes first.
  return document.querySelector("[data-table-filter], [role=dialog]") === null;
}

/** Finds anything by what stands on its plate; Ctrl K or ⌘ K opens it, `/` where no table is. */
export function SearchPalette() {
  const [open, setOpen] = useState(false);
  const [query, setQuery] = useState("");
  const router = useRouter();
  const params = useSearchParams();
  const answer = useSearch(open ? query : "");

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
    <DialogTrigger isOpen={open} onOpenChange={setOpen}>
      <Button className="button sm:min-w-72 sm:justify-between">
        Search
        <kbd className="font-normal font-sans text-ink-2 text-sm max-sm:hidden">Ctrl K</kbd>
      </Button>
      <ModalOverlay className="backdrop" isDismissable>
        <Modal className="w-full max-w-2xl border border-ink-2 bg-sheet text-ink">
          <Dialog aria-label="Search" className="outline-none">
            <Autocomplete inputValue={query} onInputChange={setQuery}>
              <SearchField aria-label="Search" className="border-ink border-b-2">
                <Input
                  autoFocus
                  className="w-full bg-transparent px-4 py-3 text-lg outline-none"
                  placeholder="Designation, serial, part number, bin, line"
                />
              </SearchField>
              <SearchResults answer={answer} query={query} onChoose={follow} />
            </Autocomplete>
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
