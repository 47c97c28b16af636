# Names of the layers of the kit's own assemblies.
inner-membrane = inner membrane
