# A list in a sentence.
listing = { $first }, { $next }
listed = { $first } and { $last }
