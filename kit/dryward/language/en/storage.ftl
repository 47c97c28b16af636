### Files that cannot be read or written. $file is the end of a file's name, as it is.

too-many-copies = There are too many unreadable copies of { $file }; move them away.
no-text = { $file }: it is not a text file.
no-file = { $file }: it is not a file.
a-folder = { $file }: it is a folder, not a file.
not-there = { $file }: there is no such file.
# $cause is what the operating system says, or the message after this.
cannot-be-read = { $file }: it cannot be read ({ $cause }).
no-name = the name is not one a file can have
# Why a file is not written; each stands where $cause or $reason does.
disk-full = the disk is full
folder-closed = this folder may not be written
folder-not-there = the folder is not there
another-writes = another program is writing it
system-refused = the system refused it
cannot-be-written = { $file }: it cannot be written ({ $cause }).
being-written = { $file }: another program is writing it; try again.
already-there = { $file }: there is already a file of that name; it was left as it is.
changed = { $file }: it was changed or removed since it was opened; open it again, or save under another name.
# $called is what it should be, with its article: "an assembly".
too-large = { $file }: it is larger than { $most } bytes, too large for { $called }.

## What is wrong with the head of a file; it follows the file's name and a colon.

empty = it is empty.
# $format is a word of the file and stays as it is.
other-format = it does not begin with format = "{ $format }".
no-version = its version must be a whole number from 1 to { $latest }.
newer = it is of version { $version }, newer than this kit, which reads up to version { $latest }.
