### The published values and the kit's own answers beside them.  What a row asks, where its value stands and how it
### was read are told in the tables themselves, in the language of their sources.

# $published, $here and $allowed are numbers with their units, or words.
check = { $what }: published { $published }, here { $here }, allowed difference { $allowed } ({ $source }, { $where })
with-unit = { $number } { $unit }

## Errors: $table is the name of a table, $row the id of one of its rows, $column the title of a column

no-column = The table { $table } has no column "{ $column }".
no-number = Row { $row } of the table { $table }: { $column } is "{ $text }", not a number.
not-given = Row { $row } of the table { $table } does not give { $name } as a number.
word-with-tolerance = Row { $row } of the table { $table } expects a word; it must have no tolerance.
no-table = There is no table of published values { $table }.csv.
lacks-column = The table { $table } lacks the column { $column }.
fields = Row { $row } of the table { $table } has not as many fields as the table has columns.
lacks = Row { $row } of the table { $table } has no { $column }.
stands-twice = The id { $row } stands twice in the table { $table }.
nothing-computes = Row { $row } of the table { $table }: nothing computes "{ $asked }".
trouble = Row { $row } of the table { $table }: { $trouble }
# $item and $property are words of the tables.
no-range = Row { $row }: { $item } has no range of { $property }.
part-of-codes = Row { $row } of the table codes: "{ $part }" is not understood.
layer-lacks = The layer { $layer } has neither a resistance nor a permeance.
layers-not-understood = The layers "{ $layers }" are not understood: { $trouble }.
