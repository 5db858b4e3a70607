"""Pages that enter and list records."""
