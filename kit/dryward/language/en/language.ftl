# Words in a list, the last but one from the left: "a, b", then "a, b and c" or "a, b or c".
listing = { $first }, { $next }
listed = { $first } and { $last }
either = { $first } or { $last }
