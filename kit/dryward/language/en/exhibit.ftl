### What a result offers at a prompt.

# A library that a picture or a table needs and that is not there.
needs = { $library ->
    [matplotlib] A picture needs { $library }, which is not installed here.
   *[pandas] A table of pandas needs { $library }, which is not installed here.
}
