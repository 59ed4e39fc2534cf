package sarif

// The objects below are those of the standard, in its words; sections are of
// its chapter 3. Pointers and omitempty leave out what has the default value.

// log is the sarifLog object of section 3.13, the root of a file.
type log struct {
	Schema  string `json:"$schema"`
	Version string `json:"version"`
	Runs    []run  `json:"runs"`
}

// run is the run object of section 3.14.
type run struct {
	Tool               tool                `json:"tool"`
	Invocations        []invocation        `json:"invocations"`
	OriginalURIBaseIDs map[string]location `json:"originalUriBaseIds"`
	Artifacts          []artifact          `json:"artifacts"`
	Results            []result            `json:"results"`
	NewlineSequences   []string            `json:"newlineSequences"`
	ColumnKind         string              `json:"columnKind"`
	Properties         runProperties       `json:"properties"`
}

type runProperties struct {
	Accepted int       `json:"accepted"` // findings left out because the project accepts them
	Baseline *baseline `json:"baseline,omitempty"`
}

// baseline counts findings that were recorded earlier: found again, no longer
// found, and of plans that the run did not look at.
type baseline struct {
	Recorded int `json:"recorded"`
	Old      int `json:"old"`
	Gone     int `json:"gone"`
	Unseen   int `json:"unseen"`

	Since    string `json:"since,omitempty"`
	Same     int    `json:"same,omitempty"`
	Unjudged int    `json:"unjudged,omitempty"`
}

// tool is the tool object of section 3.18.
type tool struct {
	Driver component `json:"driver"`
}

// component is toolComponent, 3.19.
type component struct {
	Name          string       `json:"name"`
	Version       string       `json:"version,omitempty"`
	Rules         []descriptor `json:"rules"`
	Notifications []descriptor `json:"notifications,omitempty"`
}

// descriptor is reportingDescriptor, 3.49.
type descriptor struct {
	ID                   string         `json:"id"`
	ShortDescription     *message       `json:"shortDescription,omitempty"`
	FullDescription      *message       `json:"fullDescription,omitempty"`
	DefaultConfiguration *configuration `json:"defaultConfiguration,omitempty"`
	Help                 *message       `json:"help,omitempty"`
	Properties           *tags          `json:"properties,omitempty"`
}

// configuration is reportingConfiguration, 3.50.
type configuration struct {
	Level string `json:"level"`
}

// tags is the tags of a property bag, section 3.8.2.
type tags struct {
	Tags []string `json:"tags"`
}

// message is the message object of section 3.11, and the multiformatMessageString object of section 3.12.
type message struct {
	Text string `json:"text"`
}

// invocation is the invocation object of section 3.20.
type invocation struct {
	ExecutionSuccessful        bool           `json:"executionSuccessful"`
	ExitCode                   *int           `json:"exitCode,omitempty"`
	ExitCodeDescription        string         `json:"exitCodeDescription,omitempty"`
	ToolExecutionNotifications []notification `json:"toolExecutionNotifications,omitempty"`
}

// notification is the notification object of section 3.58.
type notification struct {
	Descriptor reference `json:"descriptor"`
	Level      string    `json:"level"`
	Message    message   `json:"message"`
}

// reference is reportingDescriptorReference, 3.52.
type reference struct {
	ID    string `json:"id"`
	Index int    `json:"index"`
}

// artifact is the artifact object of section 3.24.
type artifact struct {
	Location location `json:"location"`
	MIMEType string   `json:"mimeType,omitempty"`
	Roles    []string `json:"roles,omitempty"`
}

// location is artifactLocation, 3.4.
type location struct {
	URI         string   `json:"uri,omitempty"`
	URIBaseID   string   `json:"uriBaseId,omitempty"`
	Index       *int     `json:"index,omitempty"`
	Description *message `json:"description,omitempty"`
}

// result is the result object of section 3.27.
type result struct {
	RuleID              string            `json:"ruleId"`
	RuleIndex           int               `json:"ruleIndex"`
	Level               string            `json:"level"`
	Message             message           `json:"message"`
	Locations           []place           `json:"locations,omitempty"`
	RelatedLocations    []place           `json:"relatedLocations,omitempty"`
	PartialFingerprints map[string]string `json:"partialFingerprints"`
	BaselineState       string            `json:"baselineState,omitempty"` // 3.27.24
	Suppressions        []suppression     `json:"suppressions,omitempty"`
	Fixes               []fix             `json:"fixes,omitempty"`
	Properties          resultProperties  `json:"properties"`
}

type resultProperties struct {
	Plan    string        `json:"plan,omitempty"`
	Sizes   []string      `json:"sizes,omitempty"`
	Pointer string        `json:"pointer,omitempty"`
	Hint    string        `json:"hint,omitempty"`
	Follows []consequence `json:"follows,omitempty"`
}

// consequence is a finding that is mended with the one of the result. Its
// place is the related location with its id.
type consequence struct {
	RuleID     string   `json:"ruleId"`
	Level      string   `json:"level"`
	Sizes      []string `json:"sizes,omitempty"`
	LocationID int      `json:"locationId"`
}

// fix is the fix object of section 3.55.
type fix struct {
	Description     message          `json:"description"`
	ArtifactChanges []artifactChange `json:"artifactChanges"`
}

// artifactChange is the artifactChange object of section 3.56.
type artifactChange struct {
	ArtifactLocation location      `json:"artifactLocation"`
	Replacements     []replacement `json:"replacements"`
}

// replacement is the replacement object of section 3.57.
type replacement struct {
	DeletedRegion   region  `json:"deletedRegion"`
	InsertedContent content `json:"insertedContent"`
}

// content is the artifactContent object of section 3.3.
type content struct {
	Text string `json:"text"`
}

// suppression is the suppression object of section 3.35.
type suppression struct {
	Kind          string `json:"kind"`
	Status        string `json:"status"`
	Justification string `json:"justification,omitempty"`
	Location      *place `json:"location,omitempty"`
}

// place is location, 3.28.
type place struct {
	ID               int       `json:"id,omitempty"`
	PhysicalLocation *physical `json:"physicalLocation,omitempty"`
	LogicalLocations []logical `json:"logicalLocations,omitempty"`
	Message          *message  `json:"message,omitempty"`
}

// physical is physicalLocation, 3.29.
type physical struct {
	ArtifactLocation location `json:"artifactLocation"`
	Region           *region  `json:"region,omitempty"`
}

// region is the region object of section 3.30. Ends are exclusive.
type region struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
	ByteOffset  int `json:"byteOffset"`
	ByteLength  int `json:"byteLength"`
}

// logical is logicalLocation, 3.33.
type logical struct {
	Name               string `json:"name"`
	FullyQualifiedName string `json:"fullyQualifiedName"`
	Kind               string `json:"kind"`
}
